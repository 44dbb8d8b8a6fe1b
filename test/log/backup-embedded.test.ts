import { describeBackup } from './backup-contract'

describeBackup('the embedded cluster', async () => undefined)
