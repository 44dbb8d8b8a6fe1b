import { afterAll, test } from 'vitest'
import { hasDebianServer, startDebianServer } from '@/test/store/debian-server'
import { describeLog } from './log-contract'

if (hasDebianServer()) {
  let server: ReturnType<typeof startDebianServer> | undefined
  describeLog('PostgreSQL 15', async () => {
    server ??= startDebianServer()
    return (await server).makeDatabase('log')
  })
  afterAll(async () => (await server)?.stop())
} else {
  test.skip('log on PostgreSQL 15 [needs postgresql-15]', () => {})
}
