import { spawn } from 'node:child_process'
import { chmodSync, chownSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { type ClusterLease, runningPort, takeLease } from './cluster-lease'
import { embeddedBinaries, runProgram, type ServerUser } from './server-binaries'
import { freePort, keepSecret, loadSecret, makeSecret, urlOf } from './server-secret'
import { demandReachable, serverUser } from './server-user'
import { withStartLock } from './start-lock'
import { StoreUnavailable } from './store-unavailable'

/** The embedded server in use by this process. */
export type Cluster = {
  url(database: string): string
  /** Stop using it; whoever is the last to do so stops the server. */
  close(): Promise<void>
}

/**
 * Join the running server of a data folder, or start it (making it first when the folder is new). Web and command line may
 * do so at the same time; they share one server, and the last to leave stops it.
 * @throws StoreUnavailable with a plain line: another major version, a folder the server's user cannot enter, a failed start
 */
export async function openCluster(dataDir: string): Promise<Cluster> {
  const folder = resolve(dataDir)
  mkdirSync(folder, { recursive: true })
  for (let tries = 0; tries < 5; tries += 1) {
    const lease =
      (await takeLease(folder)) ??
      (await withStartLock(folder, async () => (await takeLease(folder)) ?? (await start(folder))))
    if (lease) return inUse(folder, lease)
  }
  throw new StoreUnavailable('start-failed', `The database in ${folder} starts but cannot be joined.`)
}

async function start(folder: string): Promise<ClusterLease | null> {
  const binaries = embeddedBinaries()
  const cluster = join(folder, 'db')
  const user = await serverUser(cluster)
  demandReachable(folder, user)
  demandReachable(binaries.folder, user)
  if (!existsSync(join(cluster, 'PG_VERSION'))) await make(folder, binaries.folder, user)
  const major = Number.parseInt(readFileSync(join(cluster, 'PG_VERSION'), 'utf8'), 10)
  if (major !== binaries.major)
    throw new StoreUnavailable(
      'version-mismatch',
      `The data in ${cluster} is of PostgreSQL ${major}, this program brings ${binaries.major}: dump it with version ${major} and load it into a new folder.`,
    )
  const secret = loadSecret(folder)
  if (!secret)
    throw new StoreUnavailable(
      'secret-missing',
      `${folder} holds a database but not its database.json: put that file back.`,
    )
  const port = await freePort(secret.port)
  if (port !== secret.port) keepSecret(folder, { ...secret, port })
  dropStalePid(cluster)
  const options = `-p ${port} -c listen_addresses=127.0.0.1 -c unix_socket_directories='' -c log_min_error_statement=panic -c timezone=UTC -c log_timezone=UTC`
  const started = await runProgram(
    join(binaries.folder, 'pg_ctl'),
    ['start', '-w', '-t', '90', '-s', '-D', cluster, '-l', join(cluster, 'server.log'), '-o', options],
    user,
  )
  if (started.code !== 0)
    throw new StoreUnavailable(
      'start-failed',
      `PostgreSQL did not start in ${cluster}: see server.log there. ${started.output.replaceAll('\n', ' ')}`.trim(),
    )
  return takeLease(folder)
}

async function make(folder: string, binaries: string, user: ServerUser): Promise<void> {
  const fresh = join(folder, 'db.new')
  const passwordFile = join(folder, 'db.password')
  rmSync(fresh, { recursive: true, force: true })
  mkdirSync(fresh, { mode: 0o700 })
  const secret = loadSecret(folder) ?? (await makeSecret())
  keepSecret(folder, secret)
  try {
    rmSync(passwordFile, { force: true })
    writeFileSync(passwordFile, `${secret.password}\n`, { mode: 0o600 })
    if (user) for (const path of [fresh, passwordFile]) chownSync(path, user.uid, user.gid)
    chmodSync(fresh, 0o700)
    const made = await runProgram(
      join(binaries, 'initdb'),
      ['-D', fresh, '-U', secret.user, '-E', 'UTF8', '--locale=C', '--auth=scram-sha-256', `--pwfile=${passwordFile}`],
      user,
    )
    if (made.code !== 0)
      throw new StoreUnavailable(
        'start-failed',
        `PostgreSQL could not make its data folder: ${made.output.replaceAll('\n', ' ').slice(-600)}`,
      )
  } finally {
    rmSync(passwordFile, { force: true })
  }
  renameSync(fresh, join(folder, 'db'))
}

/** After a crash in a container the number in postmaster.pid may belong to another program, which would keep the server from starting. */
function dropStalePid(cluster: string): void {
  const file = join(cluster, 'postmaster.pid')
  if (process.platform !== 'linux' || !existsSync(file)) return
  const pid = readFileSync(file, 'utf8').split('\n')[0] ?? ''
  const name = existsSync(`/proc/${pid}/comm`) ? readFileSync(`/proc/${pid}/comm`, 'utf8').trim() : ''
  if (name !== 'postgres') rmSync(file, { force: true })
}

function inUse(folder: string, lease: ClusterLease): Cluster {
  const secret = loadSecret(folder)
  const port = runningPort(folder)
  if (!secret || port === null)
    throw new StoreUnavailable('start-failed', `The database in ${folder} stopped while it was being joined.`)
  let isOpen = true
  // An exit without close() cannot wait: a process of its own looks whether the server is still used.
  const onExit = () => {
    if (isOpen)
      spawn(process.execPath, ['--import', 'tsx', join(process.cwd(), 'db', 'stop-unused-cluster.ts'), folder], {
        detached: true,
        stdio: 'ignore',
      }).unref()
  }
  const onSignal = (signal: NodeJS.Signals) => {
    if (process.listenerCount(signal) <= 1) process.exit(signal === 'SIGINT' ? 130 : 143)
  }
  process.on('exit', onExit)
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, onSignal)
  return {
    url: (database) => urlOf({ ...secret, port }, database),
    async close() {
      if (!isOpen) return
      isOpen = false
      process.off('exit', onExit)
      for (const signal of ['SIGINT', 'SIGTERM'] as const) process.off(signal, onSignal)
      await leave(folder, lease)
    },
  }
}

/** Give up a lease and stop the server when it was the last. A server that is already gone is left so. */
export async function leave(folder: string, lease: ClusterLease): Promise<void> {
  const cluster = join(folder, 'db')
  const isLast = await lease.release().catch(() => false)
  if (isLast)
    await runProgram(
      join(embeddedBinaries().folder, 'pg_ctl'),
      ['stop', '-w', '-t', '60', '-s', '-m', 'fast', '-D', cluster],
      await serverUser(cluster),
    )
  await lease.end()
}
