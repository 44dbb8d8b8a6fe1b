import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, test } from 'vitest'
import { holderByHand } from './holder-by-hand'
import { check, codesOf, edited, preparedWorld } from './signed-by-hand'

const FORMAT = readFileSync(new URL('../../lib/evidence/FORMAT.md', import.meta.url), 'utf8')
let world: Awaited<ReturnType<typeof preparedWorld>>
let file: Uint8Array
beforeAll(async () => {
  world = await preparedWorld()
  file = world.log.export(world.holder.key)
})
const changed = async (change: (lines: string[]) => string[]) =>
  codesOf(await check(edited(file, (text) => `${change(text.split('\n').slice(0, -1)).join('\n')}\n`)))

describe('a log export', () => {
  test('the worked example of the format is intact', async () => {
    const [, example] = /```text export\n([\s\S]*?)\n```/.exec(FORMAT) ?? []
    const answer = await check(new TextEncoder().encode(`${example}\n`))
    expect(answer.breaks).toEqual([])
    expect(answer).toMatchObject({ answer: 'intact', about: { logSize: 5, shortDigest: '8da8 b35a 3c77 1735' } })
  })

  test('is intact, and of the known signer by key and by earlier checkpoints, which it is shown to contain', async () => {
    const { holder, log } = world
    expect(await check(file)).toMatchObject({
      answer: 'intact',
      signer: 'not known',
      about: { factCount: log.facts.length },
    })
    expect(await check(file, { key: new TextEncoder().encode(holder.key.vkey.text) })).toMatchObject({
      signer: 'known',
    })
    for (const size of [2, 500, log.facts.length]) {
      const answer = await check(file, { checkpoint: log.checkpoint(holder.key, size) })
      expect(answer).toMatchObject({ answer: 'intact', signer: 'known' })
      expect(answer.proved.map((one) => one.code)).toContain('consistency')
    }
  })

  test('contradicts a checkpoint of the same log that held something else', async () => {
    const { holder, log } = world
    const fork = log.checkpoint(holder.key, 400).split('\n')
    const other = { ...holder, log: log.root(399) }
    const { signCheckpoint } = await import('@/lib/evidence/checkpoint')
    const forged = signCheckpoint({ origin: fork[0] ?? '', size: 400, root: other.log }, holder.key)
    expect(await check(file, { checkpoint: forged })).toMatchObject({ answer: 'broken', signer: 'other' })
  })

  test('of another signer by a stranger’s key', async () => {
    const stranger = await holderByHand(9)
    const answer = await check(file, { key: new TextEncoder().encode(stranger.key.vkey.text) })
    expect(answer).toMatchObject({ answer: 'broken', signer: 'other' })
  })

  test('a fact changed, dropped, doubled or moved, a line behind the end, a cut end: each is named', async () => {
    expect(
      await changed((lines) => lines.map((line, at) => (at === 100 ? line.replace('"v":1', '"v": 1') : line))),
    ).toEqual(['fact-digest', 'fact-not-canonical'])
    expect(await changed((lines) => [...lines.slice(0, 99), ...lines.slice(101)])).toContain('checkpoint-size')
    expect(await changed((lines) => [...lines.slice(0, 99), ...lines.slice(97, 99), ...lines.slice(101)])).toContain(
      'root-differs',
    )
    expect(
      await changed((lines) => [
        ...lines.slice(0, 101),
        ...lines.slice(103, 105),
        ...lines.slice(101, 103),
        ...lines.slice(105),
      ]),
    ).toContain('root-differs')
    expect(await changed((lines) => [...lines, 'more'])).toEqual(['line-after-end'])
    expect(await changed((lines) => lines.slice(0, -1))).toEqual(['checkpoint-size'])
    expect(codesOf(await check(file.subarray(0, file.length - 1)))).toEqual(['text-malformed'])
  })

  test('a line of the head that is otherwise is no export', async () => {
    const noted = edited(file, (text) => text.replace(/"size":\d+/, '$&,"note":1'))
    expect(new TextDecoder().decode(noted)).toContain(',"note":1')
    expect(await check(noted)).toMatchObject({ answer: 'unreadable' })
  })
})
