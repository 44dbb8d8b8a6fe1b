import { describeLog } from './log-contract'

describeLog('the embedded cluster', async () => undefined)
