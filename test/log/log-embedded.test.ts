import { describeLog } from './log-contract'
import { describeLogKeys } from './log-keys-contract'

describeLog('the embedded cluster', async () => undefined)
describeLogKeys('the embedded cluster', async () => undefined)
