import { beforeAll, describe, expect, test } from 'vitest'
import {
  check,
  codesOf,
  edited,
  preparedWorld,
  signedFile,
  withAttachment,
  withManifest,
  withoutLastLine,
} from './signed-by-hand'

let world: Awaited<ReturnType<typeof preparedWorld>>
beforeAll(async () => {
  world = await preparedWorld()
})

describe('a record that the holder itself falsified and signed again', () => {
  test('the last fact dropped: the stream is short, whether the manifest is told or not', async () => {
    const names = ['facts.jsonl', 'leaves.jsonl', 'inclusion.jsonl']
    const dropped = names.reduce(
      (contents, name) => withAttachment(contents, name, (bytes) => edited(bytes, withoutLastLine)),
      world.contents,
    )
    const answer = await check(await signedFile(dropped, world.holder.identity))
    expect(codesOf(answer)).toContain('stream-length')
    const untold = names.reduce(
      (contents, name) => withAttachment(contents, name, (bytes) => edited(bytes, withoutLastLine), false),
      world.contents,
    )
    expect(codesOf(await check(await signedFile(untold, world.holder.identity)))).toContain('attachment-digest')
  })

  test('an old checkpoint replayed: its size is another and the facts are not in its tree', async () => {
    const old = new TextEncoder().encode(world.log.checkpoint(world.holder.key, 700))
    const replayed = withAttachment(world.contents, 'checkpoint.txt', () => old)
    const codes = codesOf(await check(await signedFile(replayed, world.holder.identity)))
    expect(codes).toContain('checkpoint-size')
    expect(codes).toContain('not-included')
  })

  test('a reading edited in the facts alone: its digest is not the one received', async () => {
    const changed = withAttachment(world.contents, 'facts.jsonl', (bytes) =>
      edited(bytes, (lines) =>
        lines.replace('"digits":86,"kind":"number","scale":0', '"digits":82,"kind":"number","scale":0'),
      ),
    )
    expect(changed.attachments).not.toEqual(world.contents.attachments)
    expect(codesOf(await check(await signedFile(changed, world.holder.identity)))).toContain('fact-digest')
  })

  test('a verdict or a state edited in the manifest: it does not follow from the readings', async () => {
    const verdicts = withManifest(world.contents, (manifest) => ({
      ...manifest,
      verdicts: manifest.verdicts.map((one) => ({ ...one, verdict: 'pass' as const })),
    }))
    const answer = await check(await signedFile(verdicts, world.holder.identity))
    expect(codesOf(answer)).toEqual(['verdict-differs'])
    expect(answer.verdicts.agreed).toBeLessThan(answer.verdicts.total)
    const states = withManifest(world.contents, (manifest) => ({
      ...manifest,
      states: manifest.states.map((one) => ({ ...one, state: 'released' })),
    }))
    expect(codesOf(await check(await signedFile(states, world.holder.identity)))).toEqual(['state-differs'])
  })

  test('fewer verdicts than criteria, or none at all, is not intact', async () => {
    const fewer = withManifest(world.contents, (manifest) => ({ ...manifest, verdicts: manifest.verdicts.slice(1) }))
    expect(codesOf(await check(await signedFile(fewer, world.holder.identity)))).toEqual([
      'criterion-count',
      'verdict-differs',
    ])
    const none = withManifest(world.contents, (manifest) => ({ ...manifest, verdicts: [] }))
    expect(codesOf(await check(await signedFile(none, world.holder.identity)))).toContain('no-criterion')
  })

  test('a photo entry left out, and one that says another original', async () => {
    const out = withManifest(world.contents, (manifest) => ({ ...manifest, photos: manifest.photos.slice(1) }))
    expect(codesOf(await check(await signedFile(out, world.holder.identity)))).toEqual([
      'photo-entry',
      'photo-not-named',
    ])
    const other = withManifest(world.contents, (manifest) => ({
      ...manifest,
      photos: manifest.photos.map((one, index) =>
        index === 0 ? { ...one, original: { ...one.original, sizeBytes: 1 } } : one,
      ),
    }))
    expect(codesOf(await check(await signedFile(other, world.holder.identity)))).toEqual(['photo-fact'])
  })

  test('an issue that skips a number, or names an earlier one that the record does not', async () => {
    const skipped = withManifest(world.contents, (manifest) => ({
      ...manifest,
      kind: 'issue',
      revision: 1,
      purpose: 'for use',
    }))
    expect(codesOf(await check(await signedFile(skipped, world.holder.identity)))).toEqual(['revision-number'])
    const invented = withManifest(world.contents, (manifest) => ({
      ...manifest,
      earlier: [{ revision: 0, sha256: manifest.files[0]?.sha256 as never, size: null, root: null, consistency: null }],
    }))
    expect(codesOf(await check(await signedFile(invented, world.holder.identity)))).toEqual(['earlier-differs'])
  })
})
