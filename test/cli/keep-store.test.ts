import { readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { PersonId } from '@/lib/domain/facts/fact'
import { parseCheckpoint } from '@/lib/evidence/checkpoint'
import { appendFacts } from '@/lib/server/store/append-facts'
import { type OpenStore, openStore } from '@/lib/server/store/open-store'
import { makeTenant } from '@/lib/server/store/tenants'
import { groundFacts, repairFacts } from '@/test/store/repair-for-tests'
import { makeDataFolder } from '@/test/store/test-store'
import { runCommand } from './run-command'

describe('commands that keep the store', { timeout: 300_000 }, () => {
  let folder: string
  let other: string
  /** Holds the database running between commands: each of them alone would start and stop it. */
  let holder: OpenStore
  beforeAll(async () => {
    folder = makeDataFolder()
    other = makeDataFolder()
    const store = await openStore({ dataDir: folder, now: () => '2026-05-12T12:00:00+01:00' })
    await makeTenant(store, { id: 'id-a', slug: 'a', name: 'A' })
    const facts = [...groundFacts(), ...repairFacts('MD-1')]
    const appended = await appendFacts(store, 'id-a', facts, { receivedBy: PersonId.parse('QI') })
    await store.close()
    if (!appended.ok) throw new Error(appended.error.code)
    holder = await openStore({ dataDir: folder })
  })
  afterAll(async () => {
    await holder.close()
    for (const one of [folder, other]) rmSync(one, { recursive: true, force: true })
  })
  const run = (...parameters: string[]) => runCommand(parameters, { UNDERWRAP_DATA: folder })

  test('a whole store checks with code 0, and the last line counts', async () => {
    expect(await run('check-store')).toMatchObject({
      code: 0,
      error: '',
      out: expect.stringMatching(/^\d+ checked, 0 broken\n$/),
    })
  })

  test('the log is exported with its checkpoint, for its owner alone, and the checker takes it', async () => {
    const file = join(folder, 'log.jsonl')
    const { code, out, error } = await run('export-log', file)
    expect([code, error, parseCheckpoint(out).ok]).toEqual([0, '', true])
    expect(statSync(file).mode & 0o777).toBe(0o600)
    const lines = readFileSync(file, 'utf8').split('\n')
    expect([lines.length, lines.pop()]).toEqual([2 + 2 * 7 + 1, ''])
    expect(JSON.parse(lines.pop() ?? '')).toBe(out)
    expect(await run('verify', file)).toMatchObject({ code: 0, out: expect.stringContaining('Intact') })
    expect((await run('export-log')).error).toMatch(/^underwrap: Say where to.*\n$/)
    expect((await run('export-log', join(folder, 'no', 'place'))).error).toMatch(/cannot be written \(ENOENT\)\.\n$/)
  })

  test('a new log key needs a reason; the answer is the key, and who vouches for it', async () => {
    expect((await run('rotate-log-key')).error).toMatch(/^underwrap: Say why.*\n$/)
    const { code, out } = await run('rotate-log-key', '--reason', 'a laptop was lost')
    expect(code).toBe(0)
    expect(out).toMatch(/^underwrap\/[0-9a-f]{16}\/id-a\+[0-9a-f]{8}\+\S{44}\nThe former key vouches for it\.\n$/)
  })

  test('a backup is restored into an empty store with the same heads; a later checkpoint names it as older', async () => {
    const file = join(folder, 'backup.zip')
    const made = await run('backup', file)
    expect(made).toMatchObject({ code: 0, error: '' })
    const head = made.out.split('\n').slice(0, 5).join('\n').concat('\n')
    expect(parseCheckpoint(head).ok).toBe(true)
    await run('rotate-log-key', '--reason', 'a fact after the backup')
    const later = join(folder, 'later')
    writeFileSync(later, (await run('export-log', join(folder, 'log.jsonl'))).out)
    const into = (...parameters: string[]) => runCommand(['restore', file, ...parameters], { UNDERWRAP_DATA: other })
    expect(await into('--known', later)).toMatchObject({
      code: 1,
      out: '',
      error: expect.stringMatching(/older than the checkpoint you know.*1 would be missing/),
    })
    expect((await into('--known', file)).error).toMatch(/is no checkpoint/)
    const restored = await into()
    expect([restored.code, restored.error]).toEqual([0, ''])
    expect(restored.out).toContain(head)
    expect((await runCommand(['check-store'], { UNDERWRAP_DATA: other })).out).toMatch(/, 0 broken\n$/)
    expect(await into()).toMatchObject({ code: 1, error: expect.stringContaining('only into an empty store') })
  })

  test('a store with a changed fact is told line by line with code 1', async () => {
    const store = await openStore({ dataDir: folder })
    await store.db.pool.query(`update facts set bytes = bytes || '\\x20' where leaf = 2`)
    await store.close()
    const { code, out } = await run('check-store')
    expect(code).toBe(1)
    expect(out).toMatch(/^broken: fact 1 of plan:ITP-1 \(id-a, leaf 2\): its bytes do not give its digest\..*\n/)
    expect(out).toMatch(/\n\d+ checked, [1-9]\d* broken\n$/)
  })
})
