import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type Comparison, compareCheckpoints, sizeOfCheckpoint } from '@/app/(work)/audit/compare-checkpoints'
import { comparisonWords } from '@/app/(work)/audit/comparison-words'
import { type ReadLog, readLog } from '@/app/(work)/audit/read-log'
import { PersonId } from '@/lib/domain/facts/fact'
import { base64Of } from '@/lib/evidence/base64'
import { parseCheckpoint, signCheckpoint } from '@/lib/evidence/checkpoint'
import { makeLogKey } from '@/lib/evidence/log-key'
import { type ConsistencyAnswer, proveConsistency } from '@/lib/server/commands/prove-consistency'
import { loadLogKey } from '@/lib/server/log/key-folder'
import { rotateLogKey } from '@/lib/server/log/rotate-log-key'
import { openWorld, type World } from '@/test/commands/world'
import { exampleCheckpoint } from '@/test/evidence/format-examples'
import { remark } from '@/test/store/facts-for-tests'

describe('an earlier checkpoint against the log now', () => {
  let world: World
  let old: string
  let middle: string
  let now: ConsistencyAnswer
  let firstKey: string
  const ask = async (from: number): Promise<ConsistencyAnswer> => {
    const answer = await proveConsistency(await world.as('auditor'), { from: String(from) })
    if (!answer.ok) throw new Error(answer.error.code)
    return answer.value
  }
  const read = (answer: ConsistencyAnswer): ReadLog => {
    const log = readLog(answer.log)
    if (!log.ok) throw new Error(log.error.code)
    return log.value
  }
  const compare = async (text: string, heldKey: string | null = null): Promise<Comparison> => {
    const answer = await ask(sizeOfCheckpoint(text) ?? 1)
    return compareCheckpoints(text, read(answer), answer.proof, heldKey)
  }
  /** The log's present secret key, to say with it what the log never said. */
  const presentKey = async () => {
    const vkey = read(now).keys.at(-1)?.vkey
    const key = vkey ? await loadLogKey(world.store.dataDir, vkey) : null
    if (!key) throw new Error('no key')
    return key
  }
  const partsOf = (text: string) => {
    const parsed = parseCheckpoint(text)
    if (!parsed.ok) throw new Error(parsed.error.at)
    return parsed.value
  }

  beforeAll(async () => {
    world = await openWorld()
    const first = await ask(1)
    old = first.log.checkpoint.text
    firstKey = first.log.checkpoint.vkey
    await world.put([remark('one'), remark('two'), remark('three')])
    middle = (await ask(1)).log.checkpoint.text
    await rotateLogKey(world.store, world.store.tenant, PersonId.parse('QI'), 'a yearly change')
    await world.put([remark('four')])
    now = await ask(1)
  })
  afterAll(() => world.store.remove())

  test('a log that grew contains what was seen, also over a change of keys, and the sizes are said', async () => {
    const [from, size] = [partsOf(old).size, now.log.checkpoint.size]
    expect(size).toBe(from + 5)
    expect(await compare(old)).toMatchObject({ code: 'contained', fromSize: from, size })
    expect(await compare(middle)).toMatchObject({ code: 'contained', fromSize: from + 3, size })
    const told = comparisonWords(await compare(old))
    expect(told).toMatchObject({ isGood: true, title: 'The log still contains all that you saw.' })
    expect(told.text).toContain(`first ${from} facts`)
    expect(told.text).toContain('5 came after')
  })

  test('the same head is the same', async () => {
    expect(await compare(now.log.checkpoint.text)).toMatchObject({ code: 'same', size: now.log.checkpoint.size })
  })

  test('a text that is no checkpoint, and one cut at its last line', async () => {
    expect(await compare('a shopping list\n')).toEqual({ code: 'malformed', at: 'form' })
    expect(await compare(old.replace(/\n[^\n]*\n$/, '\n'))).toMatchObject({ code: 'malformed' })
    expect(await compare(old.replace('\n', '\r\n'))).toMatchObject({ code: 'malformed' })
  })

  test('a checkpoint of another log', async () => {
    expect(await compare(exampleCheckpoint('checkpoint-3'))).toMatchObject({
      code: 'other-log',
      theirs: 'underwrap/0123456789abcdef/example',
    })
  })

  test('a changed root or size no longer carries our signature, nor does another key under our name', async () => {
    const changed = old.replace(/\n(\d+)\n/, (_line, size: string) => `\n${Number(size) - 1}\n`)
    expect(await compare(changed)).toEqual({ code: 'not-ours' })
    const stranger = makeLogKey(partsOf(old).origin, new Uint8Array(32).fill(7))
    expect(await compare(signCheckpoint(partsOf(old), stranger))).toEqual({ code: 'not-ours' })
  })

  test('a larger size than the log has: the store was set back', async () => {
    const { origin, root } = partsOf(now.log.checkpoint.text)
    const size = now.log.checkpoint.size + 40
    const text = signCheckpoint({ origin, root, size }, await presentKey())
    expect(await compare(text)).toEqual({ code: 'set-back', fromSize: size, size: now.log.checkpoint.size })
    expect(comparisonWords(await compare(text))).toMatchObject({ isGood: false })
  })

  test('another root at the same size, and another history at a smaller one: a fork', async () => {
    const { origin } = partsOf(old)
    const { size } = now.log.checkpoint
    const root = new Uint8Array(32).fill(9)
    const key = await presentKey()
    expect(await compare(signCheckpoint({ origin, root, size }, key))).toEqual({ code: 'fork-same-size', size })
    expect(await compare(signCheckpoint({ origin, root, size: size - 1 }, key))).toMatchObject({ code: 'fork' })
  })

  test('a key of this log that was not in force at that size', async () => {
    const text = signCheckpoint(partsOf(old), await presentKey())
    expect(await compare(text)).toMatchObject({ code: 'key-out-of-turn' })
  })

  test('with a key that is held: the first leads on by its endorsement, another is unknown', async () => {
    expect(await compare(old, firstKey)).toMatchObject({ code: 'contained' })
    expect(await compare(old, now.log.checkpoint.vkey)).toEqual({ code: 'not-ours' })
    expect(await compare(old, makeLogKey(partsOf(old).origin, new Uint8Array(32)).vkey.text)).toEqual({
      code: 'held-key-unknown',
    })
  })

  test('a proof that is none, or of other hashes, shows nothing', async () => {
    const answer = await ask(partsOf(old).size)
    const log = read(answer)
    expect(compareCheckpoints(old, log, null, null)).toEqual({ code: 'no-proof' })
    expect(compareCheckpoints(old, log, ['not base64'], null)).toEqual({ code: 'no-proof' })
    const other = (answer.proof ?? []).map(() => base64Of(new Uint8Array(32)))
    expect(other.length).toBeGreaterThan(0)
    expect(compareCheckpoints(old, log, other, null)).toMatchObject({ code: 'fork' })
  })

  test('a server that lies of its own log is found out before anything is compared', () => {
    const { checkpoint, keys } = now.log
    const last = keys.at(-1)
    if (!last) throw new Error('no key')
    const faults = [
      readLog({ checkpoint: { ...checkpoint, size: checkpoint.size - 1 }, keys }),
      readLog({ checkpoint, keys: keys.slice(0, 1) }),
      readLog({ checkpoint, keys: keys.slice(1) }),
      readLog({ checkpoint, keys: [...keys.slice(0, -1), { ...last, index: last.index - 1 }] }),
      readLog({ checkpoint, keys: [...keys.slice(0, -1), { ...last, bytes: last.bytes.replace('yearly', 'secret') }] }),
    ]
    expect(faults.map((one) => (one.ok ? 'good' : one.error.code))).toEqual([
      'head-malformed',
      'head-not-signed',
      'key-not-in-log',
      'key-not-in-log',
      'key-not-in-log',
    ])
  })
})
