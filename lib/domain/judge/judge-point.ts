export { judgePoint } from './judge-criterion'
