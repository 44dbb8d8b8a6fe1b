import { afterAll, test } from 'vitest'
import { hasDebianServer, startDebianServer } from './debian-server'
import { describeStore } from './store-contract'

if (hasDebianServer()) {
  let stop = async () => {}
  describeStore('PostgreSQL 15', async () => {
    const server = await startDebianServer()
    stop = server.stop
    return server.url
  })
  afterAll(() => stop())
} else {
  test.skip('store on PostgreSQL 15 [needs postgresql-15]', () => {})
}
