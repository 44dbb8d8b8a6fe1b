import { host } from './host.mjs'

await host('demo')
