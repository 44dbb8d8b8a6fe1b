import { spawn } from 'node:child_process'
import { chmodSync, existsSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openDatabase } from '@/db/client'
import { runningPort } from '@/db/cluster-lease'
import { makeDataFolder } from './test-store'

/** A process of its own that opens the database, says `open`, and ends as told. */
const HOLDER = `import { openDatabase } from '@/db/client'
const database = await openDatabase({ dataDir: process.argv[2] })
process.stdout.write('open\\n')
process.stdin.once('data', () => database.close().then(() => process.exit(0)))`

function hold(folder: string) {
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', '--input-type=module', '-e', HOLDER.replace('process.argv[2]', JSON.stringify(folder))],
    { stdio: ['pipe', 'pipe', 'inherit'] },
  )
  const opened = new Promise<void>((settle, fail) => {
    child.stdout.once('data', () => settle())
    child.once('close', () => fail(new Error('ended before it opened')))
  })
  const ended = new Promise<void>((settle) => child.once('close', () => settle()))
  return { child, opened, ended, leave: () => child.stdin.write('go\n') }
}

async function becomesTrue(question: () => boolean): Promise<boolean> {
  for (let tries = 0; tries < 200; tries += 1) {
    if (question()) return true
    await new Promise((settle) => setTimeout(settle, 50))
  }
  return false
}

describe('embedded cluster', () => {
  let folder: string
  beforeAll(() => {
    folder = makeDataFolder()
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))
  const isRunning = () => runningPort(folder) !== null

  test('two opens at once make one server, and the last to leave stops it', async () => {
    const [first, second] = await Promise.all([openDatabase({ dataDir: folder }), openDatabase({ dataDir: folder })])
    expect(first.url).toBe(second.url)
    await first.close()
    expect((await second.pool.query('select 1 as one')).rows).toEqual([{ one: 1 }])
    await second.close()
    expect(isRunning()).toBe(false)
  })

  test('port and password are kept in the data folder for its owner alone', () => {
    const file = join(folder, 'database.json')
    expect(statSync(file).mode & 0o777).toBe(0o600)
    expect(JSON.parse(readFileSync(file, 'utf8')).password.length).toBeGreaterThanOrEqual(32)
    expect(statSync(join(folder, 'db')).mode & 0o777).toBe(0o700)
  })

  test('another process joins the server of the first and keeps it when the first leaves', async () => {
    const mine = await openDatabase({ dataDir: folder })
    const other = hold(folder)
    await other.opened
    await mine.close()
    expect(isRunning()).toBe(true)
    other.leave()
    await other.ended
    expect(isRunning()).toBe(false)
  })

  test.each(['SIGTERM', 'SIGINT'] as const)('a process stopped by %s stops the server it started', async (signal) => {
    const other = hold(folder)
    await other.opened
    other.child.kill(signal)
    await other.ended
    expect(await becomesTrue(() => !isRunning())).toBe(true)
  })

  test('the server that a killed process left behind is joined, then stopped by who joined it', async () => {
    const other = hold(folder)
    await other.opened
    other.child.kill('SIGKILL')
    await other.ended
    expect(isRunning()).toBe(true)
    const mine = await openDatabase({ dataDir: folder })
    await mine.close()
    expect(isRunning()).toBe(false)
  })

  test('a postmaster.pid that names another program does not keep the server from starting', async () => {
    writeFileSync(join(folder, 'db', 'postmaster.pid'), `${process.pid}\n${join(folder, 'db')}\n1\n1\n\n127.0.0.1\n\n`)
    const mine = await openDatabase({ dataDir: folder })
    await mine.close()
    expect(existsSync(join(folder, 'db', 'postmaster.pid'))).toBe(false)
  })

  test('data of another major version is refused, and left as it is', async () => {
    const file = join(folder, 'db', 'PG_VERSION')
    const version = readFileSync(file, 'utf8')
    writeFileSync(file, '13\n')
    await expect(openDatabase({ dataDir: folder })).rejects.toMatchObject({
      code: 'version-mismatch',
      message: expect.stringContaining('PostgreSQL 13'),
    })
    writeFileSync(file, version)
    await (await openDatabase({ dataDir: folder })).close()
  })

  test('a database without its secret is refused', async () => {
    const file = join(folder, 'database.json')
    const secret = readFileSync(file, 'utf8')
    rmSync(file)
    await expect(openDatabase({ dataDir: folder })).rejects.toMatchObject({ code: 'secret-missing' })
    writeFileSync(file, secret, { mode: 0o600 })
  })

  test('a folder that the server user cannot enter is refused with what to change', async ({ skip }) => {
    if (process.getuid?.() !== 0) skip('root: only root runs the server as another user')
    const closed = makeDataFolder()
    chmodSync(closed, 0o700)
    await expect(openDatabase({ dataDir: join(closed, 'data') })).rejects.toMatchObject({
      code: 'folder-unreachable',
      message: expect.stringContaining('chmod o+x'),
    })
    rmSync(closed, { recursive: true, force: true })
  })

  test('a server that cannot be reached is told in one line', async () => {
    await expect(openDatabase({ url: 'postgres://nobody@127.0.0.1:9/none' })).rejects.toMatchObject({
      code: 'connection-refused',
    })
  })
})
