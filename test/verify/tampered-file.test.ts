import { beforeAll, describe, expect, test } from 'vitest'
import { check, codesOf, preparedWorld, signedFile } from './signed-by-hand'

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
