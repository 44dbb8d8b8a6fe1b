import { host } from './host.mjs'

host('demo')
