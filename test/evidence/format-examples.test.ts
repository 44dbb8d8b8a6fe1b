import { describe, expect, test } from 'vitest'
import { streamKind } from '@/lib/domain/facts/fact'
import {
  checkpointText,
  parseCheckpoint,
  shortDigest,
  signCheckpoint,
  verifyCheckpoint,
} from '@/lib/evidence/checkpoint'
import { hexDigestOf, hexOf } from '@/lib/evidence/digest'
import { endorse, endorsementBytes, verifyEndorsement } from '@/lib/evidence/endorsement'
import { parseFactBytes } from '@/lib/evidence/fact-of-bytes'
import { followKeys, type KeyTaken } from '@/lib/evidence/follow-keys'
import { growTree } from '@/lib/evidence/growing-tree'
import { hashOfLeaf, leafBytes, parseLeaf } from '@/lib/evidence/leaf'
import { makeLogKey } from '@/lib/evidence/log-key'
import { isConsistent, isIncluded, parseProof } from '@/lib/evidence/verify-proof'
import { parseVkey } from '@/lib/evidence/vkey'
import { example, exampleCheckpoint, exampleLines } from './format-examples'

const ORIGIN = 'underwrap/0123456789abcdef/example'
const first = makeLogKey(
  ORIGIN,
  Uint8Array.from({ length: 32 }, (_, at) => at),
)
const second = makeLogKey(
  ORIGIN,
  Uint8Array.from({ length: 32 }, (_, at) => 0x20 + at),
)
const facts = exampleLines('facts')
const leaves = exampleLines('leaves')

function demand<T>(parsed: { ok: true; value: T } | { ok: false; error: unknown }): T {
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.error))
  return parsed.value
}

const checkpoint = (label: string) => demand(parseCheckpoint(exampleCheckpoint(label)))
const lines = (label: string) => example(label).split('\n')

describe('worked examples of FORMAT.md', () => {
  test('facts parse, and their digests are those written', () => {
    expect(facts.map((bytes) => streamKind(demand(parseFactBytes(bytes)).stream))).toEqual([
      'key',
      'project',
      'project',
      'project',
      'key',
    ])
    expect(facts.map(hexDigestOf)).toEqual(lines('fact-digests'))
  })

  test('each leaf commits to its fact, is written again as it stands, and has the hash written', () => {
    for (const [at, bytes] of leaves.entries()) {
      const leaf = demand(parseLeaf(bytes))
      expect(leaf.sha256).toBe(hexDigestOf(facts[at] ?? new Uint8Array()))
      expect(leaf.stream).toBe(demand(parseFactBytes(facts[at] ?? new Uint8Array())).stream)
      expect(leafBytes(leaf)).toEqual(bytes)
    }
    expect(leaves.map(hashOfLeaf).map(hexOf)).toEqual(lines('leaf-hashes'))
  })

  test('the roots grow as written', () => {
    const tree = growTree()
    const roots = leaves.map((bytes) => {
      tree.add(hashOfLeaf(bytes))
      return hexOf(tree.root())
    })
    expect(roots).toEqual(lines('roots'))
  })

  test('the inclusion proof holds for its leaf and for no other', () => {
    const { index, proof } = JSON.parse(example('inclusion'))
    const { root, size } = checkpoint('checkpoint-5')
    const hashes = parseProof(proof) ?? []
    const holdsFor = leaves.map((bytes) =>
      isIncluded({ index, size, leafHash: hashOfLeaf(bytes), proof: hashes, root }),
    )
    expect(holdsFor).toEqual([false, false, true, false, false])
  })

  test('the consistency proof holds from three leaves to five', () => {
    const proof = parseProof(JSON.parse(example('consistency'))) ?? []
    const [from, to] = [checkpoint('checkpoint-3'), checkpoint('checkpoint-5')]
    const claim = { fromSize: from.size, fromRoot: from.root, size: to.size, root: to.root, proof }
    expect(isConsistent(claim)).toBe(true)
    expect(isConsistent({ ...claim, fromRoot: to.root })).toBe(false)
  })

  test('keys, checkpoints and endorsement are written again from the seeds', () => {
    expect(lines('vkeys')).toEqual([first.vkey.text, second.vkey.text])
    expect(signCheckpoint(checkpoint('checkpoint-3'), first)).toBe(exampleCheckpoint('checkpoint-3'))
    expect(signCheckpoint(checkpoint('checkpoint-5'), second)).toBe(exampleCheckpoint('checkpoint-5'))
    expect(endorse(first, second.vkey.text)).toBe(example('endorsement'))
    expect(new TextDecoder().decode(endorsementBytes(second.vkey.text))).toBe(`${example('endorsed')}\n`)
  })

  test('each checkpoint verifies under its key alone, and its short digest is the one printed', () => {
    const [one, two] = lines('vkeys').map((line) => demand(parseVkey(line)))
    if (!one || !two) throw new Error('two keys')
    const [three, five] = [checkpoint('checkpoint-3'), checkpoint('checkpoint-5')]
    expect([verifyCheckpoint(three, one), verifyCheckpoint(three, two)]).toEqual([true, false])
    expect([verifyCheckpoint(five, one), verifyCheckpoint(five, two)]).toEqual([false, true])
    expect(shortDigest(three.root)).toBe('5556 acf4 bb77 4b1e')
    expect(checkpointText(five)).toBe(exampleCheckpoint('checkpoint-5').split('\n\n')[0]?.concat('\n'))
    expect(verifyEndorsement(one, two.text, example('endorsement'))).toBe(true)
  })

  test('trust in the first key reaches the second', () => {
    const taken = facts.flatMap((bytes) => {
      const fact = demand(parseFactBytes(bytes))
      return fact.kind === 'log-key-taken' ? [fact.body as KeyTaken] : []
    })
    expect(followKeys(taken, first.vkey.text)).toMatchObject({
      reachesPresent: true,
      brokenAt: null,
      trusted: [{ text: first.vkey.text }, { text: second.vkey.text }],
    })
    expect(followKeys(taken, 'another')).toEqual({ trusted: [], reachesPresent: false, brokenAt: null })
  })

  test('the export is these leaves and facts under this checkpoint', () => {
    const [head, ...rest] = lines('export')
    expect(JSON.parse(head ?? '')).toEqual({ kind: 'underwrap log', origin: ORIGIN, size: 5, tenant: 'example', v: 1 })
    expect(JSON.parse(rest.pop() ?? '')).toBe(exampleCheckpoint('checkpoint-5'))
    expect(rest).toEqual(lines('leaves').flatMap((leaf, at) => [leaf, lines('facts')[at]]))
  })
})
