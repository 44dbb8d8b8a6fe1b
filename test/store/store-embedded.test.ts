import { describeProjections } from './projection-contract'
import { describeStore } from './store-contract'

describeStore('the embedded cluster', async () => undefined)
describeProjections('the embedded cluster', async () => undefined)
