import { host } from './host.mjs'

await host('real')
