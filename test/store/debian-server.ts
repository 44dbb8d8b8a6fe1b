import { chownSync, existsSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import pg from 'pg'
import { runProgram } from '@/db/server-binaries'
import { freePort } from '@/db/server-secret'
import { serverUser } from '@/db/server-user'
import { makeDataFolder } from './test-store'

const BIN = '/usr/lib/postgresql/15/bin'

/** Whether Debian's PostgreSQL 15 is installed here. */
export function hasDebianServer(): boolean {
  return existsSync(join(BIN, 'initdb'))
}

/** A PostgreSQL 15 server of its own in a temporary folder. */
export async function startDebianServer(): Promise<{
  makeDatabase(name: string): Promise<string>
  stop(): Promise<void>
}> {
  const folder = makeDataFolder()
  const user = await serverUser(join(folder, 'none'))
  if (user) chownSync(folder, user.uid, user.gid)
  const cluster = join(folder, 'pg15')
  const run = async (program: string, parameters: string[]) => {
    const { code, output } = await runProgram(join(BIN, program), parameters, user)
    if (code !== 0) throw new Error(`${program}: ${output}`)
  }
  const port = await freePort()
  await run('initdb', ['-D', cluster, '-U', 'team', '-E', 'UTF8', '--locale=C', '--auth=trust'])
  await run('pg_ctl', [
    'start',
    '-w',
    '-s',
    '-D',
    cluster,
    '-l',
    join(folder, 'server.log'),
    '-o',
    `-p ${port} -c listen_addresses=127.0.0.1 -c unix_socket_directories='' -c fsync=off`,
  ])
  return {
    async makeDatabase(name) {
      const client = new pg.Client({ connectionString: `postgres://team@127.0.0.1:${port}/postgres` })
      await client.connect()
      await client.query(`create database ${client.escapeIdentifier(name)}`)
      await client.end()
      return `postgres://team@127.0.0.1:${port}/${name}`
    },
    async stop() {
      await run('pg_ctl', ['stop', '-w', '-s', '-m', 'fast', '-D', cluster])
      rmSync(folder, { recursive: true, force: true })
    },
  }
}
