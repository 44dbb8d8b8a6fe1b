import { createHash } from 'node:crypto'
import { beforeAll, describe, expect, test } from 'vitest'
import { answerWords } from '@/lib/verify/answer-words'
import { showAnswer } from '@/lib/verify/show-answer'
import { parseTrusted } from '@/lib/verify/trusted'
import { holderByHand } from './holder-by-hand'
import { check, codesOf, edited, preparedWorld, signedFile, withAttachment, withManifest } from './signed-by-hand'

let world: Awaited<ReturnType<typeof preparedWorld>>
beforeAll(async () => {
  world = await preparedWorld()
})

describe('a dossier that nobody touched', () => {
  test('is intact, its signer not known to who gives nothing, and every verdict is recomputed', async () => {
    const answer = await check(world.file)
    expect(answer.breaks).toEqual([])
    expect(answer).toMatchObject({ answer: 'intact', signer: 'not known', verdicts: { agreed: 112, total: 112 } })
    expect(answer.proved.map((one) => one.code)).toEqual([
      'layout',
      'signature',
      'attachments',
      'log',
      'photos',
      'revisions',
      'verdicts',
    ])
    expect(answer.notProved.map((one) => one.code)).toContain('later-facts')
    expect(answer.about).toMatchObject({ repair: 'repair:MD-0043', factCount: 180, photoCount: 15, isDemo: true })
  })

  test('is of the known signer by the log key, by the certificate in DER and PEM, by its fingerprint and by an earlier checkpoint', async () => {
    const { holder, log, file } = world
    const { der, sha256 } = holder.identity.certificate
    const pem = `-----BEGIN CERTIFICATE-----\n${Buffer.from(der).toString('base64')}\n-----END CERTIFICATE-----\n`
    for (const given of [
      { key: new TextEncoder().encode(`${holder.key.vkey.text}\n`) },
      { key: der },
      { key: new TextEncoder().encode(pem) },
      { fingerprint: sha256.toUpperCase().replace(/(..)(?=.)/g, '$1:') },
      { checkpoint: log.checkpoint(holder.key) },
      { checkpoint: log.checkpoint(holder.key, 100) },
    ])
      expect(await check(file, given)).toMatchObject({ answer: 'intact', signer: 'known' })
  })

  test('says what an earlier checkpoint does and does not show', async () => {
    const { holder, log, file } = world
    const same = await check(file, { checkpoint: log.checkpoint(holder.key) })
    expect(same.notProved.map((one) => one.code)).not.toContain('checkpoint-consistency')
    const earlier = await check(file, { checkpoint: log.checkpoint(holder.key, 100) })
    expect(earlier.notProved.map((one) => one.code)).toContain('checkpoint-consistency')
  })

  test('is of another signer by a stranger’s key, certificate, fingerprint or checkpoint', async () => {
    const stranger = await holderByHand(9)
    const given = [
      [{ key: new TextEncoder().encode(stranger.key.vkey.text) }, 'key-other'],
      [{ key: stranger.identity.certificate.der }, 'certificate-other'],
      [{ fingerprint: createHash('sha256').update('another').digest('hex') }, 'certificate-other'],
      [{ checkpoint: world.log.checkpoint(stranger.key) }, 'checkpoint-other'],
    ] as const
    for (const [one, code] of given) {
      const answer = await check(world.file, one)
      expect(answer).toMatchObject({ answer: 'broken', signer: 'other' })
      expect(codesOf(answer)).toEqual([code])
    }
  })

  test('is told in words that name no safety and pass nothing on that a terminal obeys', async () => {
    const hostile = withManifest(world.contents, (manifest) => ({ ...manifest, organisation: 'A\u001b[2J\u202eB' }))
    const answer = await check(await signedFile(hostile, world.holder.identity))
    const text = showAnswer(answer)
    expect(text).not.toMatch(/\bsafe\b/i)
    expect(text.replace(/\n/g, '')).not.toMatch(/\p{Cc}|\p{Cf}/u)
    expect(answerWords(answer).verdicts).toBe('Verdicts recomputed from the readings: 112 of 112 agree.')
  })
})

describe('what a checker leaves open', () => {
  test('rules that it does not know are not recomputed, and not called broken', async () => {
    const later = withManifest(world.contents, (manifest) => ({ ...manifest, rules: 'fold 99' }))
    const answer = await check(await signedFile(later, world.holder.identity))
    expect(answer).toMatchObject({ answer: 'intact', breaks: [] })
    expect(answer.notProved.map((one) => one.code)).toContain('rules-unknown')
    expect(answer.proved.map((one) => one.code)).not.toContain('verdicts')
  })

  test('a manifest of a later version is unreadable, not broken', async () => {
    const later = withAttachment(
      world.contents,
      'manifest.json',
      (bytes) => edited(bytes, (text) => text.replace(/"v":1,"verdicts"/, '"v":2,"verdicts"')),
      false,
    )
    const answer = await check(await signedFile(later, world.holder.identity))
    expect(answer.answer).toBe('unreadable')
    expect(codesOf(answer)).toEqual(['version-unknown'])
  })

  test('a photo that was not there when the file was made is told, and one that was disposed of apart', async () => {
    const first = world.contents.manifest.photos[0]
    const missing = withManifest(world.contents, (manifest) => ({
      ...manifest,
      photos: manifest.photos.map((one) =>
        one === first ? { ...one, object: null, printed: 'missing' as const } : one,
      ),
    }))
    const answer = await check(await signedFile(missing, world.holder.identity))
    expect(codesOf(answer)).toEqual(['photo-not-named'])
    expect(answer.notProved.map((one) => one.code)).toContain('photos-missing')
  })
})

describe('what a reader gives', () => {
  test.each([
    [{ key: new TextEncoder().encode('no key') }, 'key-unreadable'],
    [{ checkpoint: 'no checkpoint' }, 'checkpoint-unreadable'],
    [{ fingerprint: 'ab:cd' }, 'fingerprint-unreadable'],
  ] as const)('%o is refused', (given, code) => {
    expect(parseTrusted(given)).toEqual({ ok: false, error: { code } })
  })
})
