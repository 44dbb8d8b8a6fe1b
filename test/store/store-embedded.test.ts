import { describeStore } from './store-contract'

describeStore('the embedded cluster', async () => undefined)
