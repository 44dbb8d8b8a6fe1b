import { host } from './host.mjs'

host('real')
