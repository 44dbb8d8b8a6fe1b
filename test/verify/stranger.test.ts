import { beforeAll, describe, expect, test } from 'vitest'
import { FactId } from '@/lib/domain/facts/fact'
import { isFoldable } from '@/lib/verify/record/foldable'
import { contentsByHand } from './dossier-by-hand'
import { holderByHand, receivedByHand } from './holder-by-hand'
import { logByHand } from './log-by-hand'
import { check, codesOf, preparedWorld, signedFile } from './signed-by-hand'

let world: Awaited<ReturnType<typeof preparedWorld>>
beforeAll(async () => {
  world = await preparedWorld()
})

describe('a stranger who makes the whole record anew', () => {
  test('a reading and its verdict edited together, logged and signed by the stranger’s own keys: other against the real key, and only not known without one', async () => {
    const stranger = await holderByHand(9)
    const received = receivedByHand(stranger).map((one) => {
      return JSON.parse(
        JSON.stringify(one).replaceAll(
          '"digits":86,"scale":0,"unit":"%","text":"86"',
          '"digits":82,"scale":0,"unit":"%","text":"82"',
        ),
      ) as typeof one
    })
    const log = logByHand(received, stranger.origin)
    const contents = contentsByHand(log, stranger, 'MD-0043')
    const forged = await signedFile(contents, stranger.identity)
    const humidity = { point: '07', attempt: 1, criterion: '07.humidity' }
    expect(world.contents.manifest.verdicts).toContainEqual({ ...humidity, verdict: 'fail' })
    expect(contents.manifest.verdicts).toContainEqual({ ...humidity, verdict: 'pass' })
    expect(await check(forged)).toMatchObject({ answer: 'intact', signer: 'not known' })
    for (const given of [
      { key: new TextEncoder().encode(world.holder.key.vkey.text) },
      { key: world.holder.identity.certificate.der },
      { checkpoint: world.log.checkpoint(world.holder.key, 500) },
    ])
      expect(await check(forged, given)).toMatchObject({ answer: 'broken', signer: 'other' })
  })

  test('re-signed with another certificate that the log does not name', async () => {
    const stranger = await holderByHand(9)
    const answer = await check(await signedFile(world.contents, stranger.identity))
    expect(codesOf(answer)).toEqual(['certificate-not-last'])
  })

  test('the real keys kept in the record, the stranger’s own added without endorsement: the earlier checkpoint is not led to', async () => {
    const stranger = await holderByHand(9)
    const received = receivedByHand(world.holder)
    const last = received.at(-1)
    const [first] = receivedByHand(stranger)
    if (!last || first?.fact.kind !== 'log-key-taken') throw new Error('no key')
    const body = { ...first.fact.body, replaces: world.holder.key.vkey.text }
    const id = FactId.parse('0196d000-0000-7000-8000-00000000ffff')
    const taken = { ...last, fact: { ...first.fact, id, body } }
    const log = logByHand([...received, taken], world.holder.origin)
    const forged = await signedFile(
      contentsByHand(log, { ...world.holder, key: stranger.key }, 'MD-0043'),
      world.holder.identity,
    )
    expect(await check(forged)).toMatchObject({ answer: 'intact', signer: 'not known' })
    for (const given of [
      { checkpoint: world.log.checkpoint(world.holder.key, 500) },
      { key: new TextEncoder().encode(world.holder.key.vkey.text) },
    ])
      expect(await check(forged, given)).toMatchObject({ answer: 'broken', signer: 'other' })
  })
})

describe('a stranger who makes a record that is meant to overwhelm', () => {
  test('thousands of equal photos under valid signatures: too large to be recomputed, said at once', async () => {
    const stranger = await holderByHand(9)
    const received = receivedByHand(stranger)
    const photo = received.find(({ fact }) => fact.stream === 'repair:MD-0043' && fact.kind === 'photo-attached')
    if (!photo) throw new Error('no photo')
    const many = Array.from({ length: 900 }, (_, index) => ({
      ...photo,
      fact: { ...photo.fact, id: FactId.parse(`0196d000-0000-7000-8000-${String(900_000 + index).padStart(12, '0')}`) },
    }))
    const facts = received.map((one) => one.fact)
    expect(isFoldable(facts, photo.fact.stream)).toBe(true)
    expect(isFoldable([...facts, ...many.map((one) => one.fact)], photo.fact.stream)).toBe(false)
    const log = logByHand([...received, ...many], stranger.origin)
    const answer = await check(await signedFile(contentsByHand(log, stranger, 'MD-0043'), stranger.identity))
    expect(answer.answer).toBe('unreadable')
    expect(codesOf(answer)).toEqual(['too-large'])
  })
})
