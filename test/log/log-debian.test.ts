import { afterAll, test } from 'vitest'
import { hasDebianServer, startDebianServer } from '@/test/store/debian-server'
import { describeBackup } from './backup-contract'
import { describeLog } from './log-contract'
import { describeLogKeys } from './log-keys-contract'

if (hasDebianServer()) {
  let server: ReturnType<typeof startDebianServer> | undefined
  const urlOf = async (database: string) => {
    server ??= startDebianServer()
    return (await server).makeDatabase(database)
  }
  describeLog('PostgreSQL 15', () => urlOf('log'))
  describeLogKeys('PostgreSQL 15', () => urlOf('keys'))
  describeBackup('PostgreSQL 15', urlOf)
  afterAll(async () => (await server)?.stop())
} else {
  test.skip('log on PostgreSQL 15 [needs postgresql-15]', () => {})
}
