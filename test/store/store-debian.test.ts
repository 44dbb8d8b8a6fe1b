import { afterAll, test } from 'vitest'
import { hasDebianServer, startDebianServer } from './debian-server'
import { describeProjections } from './projection-contract'
import { describeStore } from './store-contract'

if (hasDebianServer()) {
  let server: ReturnType<typeof startDebianServer> | undefined
  const urlOf = async (database: string) => {
    server ??= startDebianServer()
    return (await server).makeDatabase(database)
  }
  describeStore('PostgreSQL 15', () => urlOf('store'))
  describeProjections('PostgreSQL 15', () => urlOf('projections'))
  afterAll(async () => (await server)?.stop())
} else {
  test.skip('store on PostgreSQL 15 [needs postgresql-15]', () => {})
}
