import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { runningPort } from '@/db/cluster-lease'
import { PersonId } from '@/lib/domain/facts/fact'
import { appendFacts } from '@/lib/server/store/append-facts'
import { type OpenStore, openStore } from '@/lib/server/store/open-store'
import { makeTenant } from '@/lib/server/store/tenants'
import { groundFacts, repairFacts } from '@/test/store/repair-for-tests'
import { makeDataFolder } from '@/test/store/test-store'
import { runCommand } from './run-command'

describe('underwrap command', { timeout: 180_000 }, () => {
  let folder: string
  beforeAll(() => {
    folder = makeDataFolder()
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))
  const run = (...parameters: string[]) => runCommand(parameters, { UNDERWRAP_DATA: folder })
  const isRunning = () => runningPort(folder) !== null

  async function withRepair(slug: string): Promise<void> {
    const store = await openStore({ dataDir: folder, now: () => '2026-05-12T12:00:00+01:00' })
    await makeTenant(store, { id: `id-${slug}`, slug, name: slug })
    const appended = await appendFacts(store, `id-${slug}`, [...groundFacts(), ...repairFacts('MD-1')], {
      receivedBy: PersonId.parse('QI'),
    })
    await store.close()
    if (!appended.ok) throw new Error(appended.error.code)
  }

  test('help lists every command on standard output', async () => {
    const { code, out, error } = await run('help')
    expect([code, error]).toEqual([0, ''])
    for (const name of ['seed-demo', 'trace', 'dossier', 'reproject', 'vectors', 'work', 'help'])
      expect(out).toContain(`  ${name}`)
  })

  test('an unknown command, and an object member that is no command, end with one line and code 1', async () => {
    for (const name of ['nothing', 'constructor']) {
      const { code, out, error } = await run(name)
      expect([code, out]).toEqual([1, ''])
      expect(error).toBe(`underwrap: There is no command ${name}: see npm run underwrap -- help\n`)
    }
  })

  test('vectors tells passed and failed, and each mismatch, without a store', async () => {
    const file = join(folder, 'cases.json')
    const one = (id: string, level: string) => ({
      id,
      fn: 'clean.parse',
      inputs: { grade: 'St 3' },
      expected: { level },
      tolerance: { abs: 0, rel: 0 },
    })
    writeFileSync(file, JSON.stringify({ vectors: [one('A', '3')] }))
    expect(await run('vectors', file)).toEqual({ code: 0, out: '1 passed, 0 failed\n', error: '' })
    writeFileSync(file, JSON.stringify({ vectors: [one('A', '3'), one('B', '2')] }))
    const failed = await run('vectors', file)
    expect(failed.code).toBe(1)
    expect(failed.out).toMatch(/^B got .* expected \{"level":"2"\}\n1 passed, 1 failed\n$/)
    expect(await run('vectors', join(folder, 'none.json'))).toMatchObject({
      code: 1,
      out: '',
      error: expect.stringMatching(/^underwrap: .* cannot be read .*\n$/),
    })
    expect(existsSync(join(folder, 'db'))).toBe(false)
  })

  test('on an empty store a command says so in one line and stops the database it started', async () => {
    const { code, out, error } = await run('reproject')
    expect([code, out]).toEqual([1, ''])
    expect(error).toMatch(/^underwrap: The store is empty.*\n$/)
    expect(isRunning()).toBe(false)
  })

  test('it works whether or not the server is running, and leaves a running one running', async () => {
    await withRepair('first')
    expect(await run('reproject')).toEqual({ code: 0, out: '1 repairs rebuilt from 6 facts\n', error: '' })
    expect(isRunning()).toBe(false)
    const holder = await openStore({ dataDir: folder })
    expect((await run('reproject')).code).toBe(0)
    expect(isRunning()).toBe(true)
    await holder.close()
    expect(isRunning()).toBe(false)
  })

  describe('beside a running server', () => {
    let holder: OpenStore
    beforeAll(async () => {
      holder = await openStore({ dataDir: folder })
    })
    afterAll(() => holder.close())

    test('what it cannot find it names', async () => {
      expect((await run('dossier', 'MD-9', '--out', join(folder, 'x.pdf'))).error).toBe(
        'underwrap: There is no repair MD-9 in this store.\n',
      )
      expect((await run('dossier', 'MD-1')).error).toMatch(/^underwrap: Say which repair.*\n$/)
      expect((await run('trace', 'NONE')).error).toBe('underwrap: There is no batch NONE in this store.\n')
      expect((await run('trace')).code).toBe(1)
    })

    test('a batch is traced as one JSON value, and as text', async () => {
      const { code, out, error } = await run('trace', 'FP-1', '--json')
      expect([code, error]).toEqual([0, ''])
      const view = JSON.parse(out)
      expect(view).toMatchObject({
        batch: 'batch:FP-1',
        number: 'FP-1',
        repairs: [{ number: 'MD-1', attempts: ['10/1'] }],
      })
      expect(view.uses.map((use: { number: string; amount: string }) => [use.number, use.amount])).toEqual([
        ['MD-1', '640 g'],
        ['MD-1', '243 g'],
      ])
      const text = (await run('trace', 'FP-1')).out
      expect(text).toContain('640 g')
      expect(text).toContain('MD-1')
    })

    test('a copy of a dossier for review is written, and issues nothing', async () => {
      const file = join(folder, 'review.pdf')
      expect(await run('dossier', 'MD-1', '--out', file)).toEqual({ code: 0, out: `${file}\n`, error: '' })
      expect(readFileSync(file).subarray(0, 5).toString()).toBe('%PDF-')
      // It is signed: the first signature brings the facts of the log's key and of the certificate, and no issue.
      expect((await run('reproject')).out).toBe('1 repairs rebuilt from 8 facts\n')
      const nowhere = await run('dossier', 'MD-1', '--out', join(folder, 'no', 'such', 'place.pdf'))
      expect([nowhere.code, nowhere.out]).toEqual([1, ''])
      expect(nowhere.error).toMatch(/^underwrap: .*cannot be written.*\n$/)
    })

    test('the demo only goes into an empty store', async () => {
      expect(await run('seed-demo')).toEqual({
        code: 1,
        out: '',
        error: 'underwrap: The store is not empty: the demo only goes into an empty one.\n',
      })
    })

    test('with two organisations it asks which, and takes the slug', async () => {
      await withRepair('second')
      expect((await run('reproject')).error).toBe(
        'underwrap: The store holds several organisations: say which with --tenant (first, second).\n',
      )
      expect((await run('reproject', '--tenant', 'second')).out).toBe('1 repairs rebuilt from 6 facts\n')
      expect((await run('reproject', '--tenant', 'third')).error).toBe(
        'underwrap: There is no organisation third in this store.\n',
      )
    })
  })
})
