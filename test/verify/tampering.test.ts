import { beforeAll, describe, expect, test } from 'vitest'
import { FactId } from '@/lib/domain/facts/fact'
import { derOf, parseDer, partsOf, sequence, tagged } from '@/lib/dossier/sign/der'
import { contentsByHand, holderByHand, receivedByHand } from './dossier-by-hand'
import { logByHand } from './log-by-hand'
import { lowerHex } from './pdf-by-hand'
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
const text = (value: string): Buffer => Buffer.from(value, 'latin1')

/** The file with one stretch of bytes put in place of another of the same length. */
function replaced(from: Uint8Array, to: Uint8Array): Uint8Array {
  const file = Buffer.from(world.file)
  const at = file.indexOf(from)
  if (at < 0 || from.length !== to.length) throw new Error('nothing to replace')
  file.set(to, at)
  return new Uint8Array(file)
}

describe('a file that somebody changed', () => {
  test('two photos swapped: both are named, and that the file was changed', async () => {
    const [a, b] = world.contents.photos
    if (!a || !b) throw new Error('no photos')
    const [first, second] = [Buffer.from(world.file).indexOf(a.bytes), Buffer.from(world.file).indexOf(b.bytes)]
    const file = new Uint8Array(world.file)
    const length = Math.min(a.bytes.length, b.bytes.length)
    file.set(b.bytes.subarray(0, length), first)
    file.set(a.bytes.subarray(0, length), second)
    const answer = await check(file)
    expect(codesOf(answer)).toEqual(['digest-differs', 'photo-digest'])
    expect(answer.breaks.filter((one) => one.code === 'photo-digest')).toHaveLength(2)
  })

  test('two photos swapped and signed again by the holder: the photos are still named', async () => {
    const [a, b, ...others] = world.contents.photos
    if (!a || !b) throw new Error('no photos')
    const answer = await check(
      await signedFile({ ...world.contents, photos: [b, a, ...others] }, world.holder.identity),
    )
    expect(codesOf(answer)).toEqual(['photo-digest'])
  })

  test('a photo object more than the manifest names', async () => {
    const more = { ...world.contents, photos: [...world.contents.photos, { bytes: text('another') }] }
    expect(codesOf(await check(await signedFile(more, world.holder.identity)))).toEqual(['photo-not-named'])
  })

  test('an attachment removed, renamed or added', async () => {
    const { attachments } = world.contents
    const removed = attachments.filter((one) => one.name !== 'leaves.jsonl')
    const renamed = attachments.map((one) => (one.name === 'leaves.jsonl' ? { ...one, name: 'leafs.jsonl' } : one))
    const added = [...attachments, { name: 'note.txt', bytes: text('hello') }]
    for (const changed of [removed, renamed, added])
      expect(
        codesOf(await check(await signedFile({ ...world.contents, attachments: changed }, world.holder.identity))),
      ).toContain('attachments-differ')
  })

  test('an update appended: named, and the file before it is still checked', async () => {
    const size = world.file.length
    const table = Buffer.from(world.file).lastIndexOf('xref\n0 ')
    const update = text(
      `3 0 obj\n<< /Type /Page >>\nendobj\nxref\n3 1\n${String(size).padStart(10, '0')} 00000 n \ntrailer\n<< /Size 30 /Root 1 0 R /Prev ${table} >>\nstartxref\n${size + 40}\n%%EOF\n`,
    )
    const answer = await check(new Uint8Array(Buffer.concat([world.file, update])))
    expect(answer.answer).toBe('broken')
    expect(codesOf(answer)).toEqual(['update-appended'])
    expect(answer.verdicts).toEqual({ agreed: 112, total: 112 })
  })

  test('bytes behind the end: named, and the file before them is still checked', async () => {
    for (const tail of ['\n', 'x', '%PDF-1.7\n'.repeat(5000)]) {
      const answer = await check(new Uint8Array(Buffer.concat([world.file, text(tail)])))
      expect(codesOf(answer)).toEqual(['bytes-appended'])
    }
  })

  test('the byte range made shorter leaves a part of the file uncovered', async () => {
    const range = /\/ByteRange \[(.*?)\]/.exec(Buffer.from(world.file).toString('latin1'))?.[1] ?? ''
    const [zero, a, b, c] = range.trim().split(' ').map(Number)
    const other = `${zero} ${a} ${(b ?? 0) + 1} ${(c ?? 0) - 1}`.padEnd(range.length)
    expect(codesOf(await check(replaced(text(range), text(other))))).toEqual(['byte-range', 'digest-differs'])
  })
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

describe('a signature written otherwise', () => {
  const changed = async (parts: Parameters<typeof signedFile>[2]) =>
    codesOf(await check(await signedFile(world.contents, world.holder.identity, parts)))

  test('upper-case hex digits', async () => {
    expect(await changed({ hexOf: (der, room) => lowerHex(der, room).toUpperCase() })).toEqual(['contents-upper-case'])
  })

  test('something behind the DER', async () => {
    expect(await changed({ hexOf: (der, room) => `${lowerHex(der, room).slice(0, -2)}01` })).toEqual([
      'padding-not-zero',
    ])
  })

  test('a length that is not the shortest', async () => {
    const long = (der: Uint8Array): Uint8Array => {
      const [tag = 0, , high = 0, low = 0] = der
      return Uint8Array.of(tag, 0x83, 0, high, low, ...der.subarray(4))
    }
    expect(await changed({ changeDer: long })).toEqual(['signature-not-der'])
  })

  test('one more certificate', async () => {
    const { der } = (await holderByHand(9)).identity.certificate
    const doubled = (cms: Uint8Array): Uint8Array => {
      const [type, body] = partsOf(parseDer(cms))
      const [version, digests, content, , signers] = partsOf(partsOf(body)[0])
      const own = parseDer(world.holder.identity.certificate.der)
      if (!type || !version || !digests || !content || !signers) throw new Error('no CMS')
      return derOf(
        sequence(type, tagged(0, [sequence(version, digests, content, tagged(0, [own, parseDer(der)]), signers)])),
      )
    }
    expect(await changed({ changeDer: doubled })).toEqual(['signature-certificates'])
  })

  test('an unsigned attribute that is no time stamp', async () => {
    const more = (cms: Uint8Array): Uint8Array => {
      const [type, body] = partsOf(parseDer(cms))
      const [version, digests, content, certificates, signers] = partsOf(partsOf(body)[0])
      if (!type || !version || !digests || !content || !certificates || !signers) throw new Error('no CMS')
      const signer = partsOf(partsOf(signers)[0])
      const attributes = tagged(1, [partsOf(signer[3])[0] ?? type])
      const set = parseDer(derOf(signers)) as typeof signers
      partsOf(set)[0] = sequence(...signer, attributes)
      return derOf(sequence(type, tagged(0, [sequence(version, digests, content, certificates, set)])))
    }
    expect(await changed({ changeDer: more })).toEqual(['signature-attributes'])
  })
})
