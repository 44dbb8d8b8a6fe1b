import { readFileSync } from 'node:fs'
import { inflateSync } from 'node:zlib'

/** A dossier taken apart by its bytes alone, strictly in the order in which they stand. */
export type SealedFile = {
  bytes: Buffer
  /** Value of each object, by number. */
  objects: Map<number, Buffer>
  /** Everything behind the last object. */
  end: string
  files: Map<string, Buffer>
  names: string[]
  manifest: Manifest
  byteRange: number[]
  /** The signature in DER, without the zeros behind it. */
  signature: Buffer
  /** What the signature covers. */
  signed: Buffer
}
type Manifest = Record<string, unknown> & {
  asOf: { moment: string; size: number }
  photos: { fact: string; object: number | null; printed: string; rendition: { sha256: string } }[]
  streams: { stream: string; length: number }[]
  verdicts: { point: string; attempt: number; criterion: string; verdict: string }[]
  files: { name: string; sha256: string; sizeBytes: number }[]
  earlier: { revision: number; sha256: string; size: number; root: string; consistency: string[] }[]
}

/** Take a dossier apart. @throws Error where the bytes do not follow one another as the format says */
export function readSealed(path: string): SealedFile {
  const bytes = readFileSync(path)
  const latin = bytes.toString('latin1')
  const objects = new Map<number, Buffer>()
  let at = latin.indexOf('\n', latin.indexOf('\n') + 1) + 1
  if (latin.slice(0, at) !== '%PDF-1.7\n%\x81\x81\x81\x81\n') throw new Error('another header')
  for (let opening = openingAt(latin, at); opening; opening = openingAt(latin, at)) {
    const no = Number(opening[1])
    const from = at + opening[0].length
    const length = /^<<[\s\S]{0,4000}?\/Length (\d+)[\s\S]{0,400}?>>\nstream\n/.exec(latin.slice(from, from + 4500))
    const isStream = length && !length[0].includes('endobj')
    const until = isStream
      ? latin.indexOf('\nendobj\n', from + length[0].length + Number(length[1]))
      : latin.indexOf('\nendobj\n', from)
    if (isStream && latin.slice(from + length[0].length + Number(length[1]), until) !== '\nendstream')
      throw new Error(`stream ${no} is longer or shorter than it says`)
    if (objects.has(no)) throw new Error(`object ${no} stands twice`)
    objects.set(no, bytes.subarray(from, until))
    at = until + '\nendobj\n'.length
  }
  const files = attachedIn(objects)
  const byteRange = (/\/ByteRange \[([\d ]+)\]/.exec(latin)?.[1] ?? '').trim().split(/ +/).map(Number)
  const [, a = 0, b = 0, c = 0] = byteRange
  const hex = latin.slice(a + 1, b - 1)
  const der = Buffer.from(hex, 'hex')
  const length = 4 + der.readUInt16BE(2)
  return {
    bytes,
    objects,
    end: latin.slice(at),
    files,
    names: [...files.keys()],
    manifest: JSON.parse((files.get('manifest.json') ?? Buffer.from('{}')).toString()),
    byteRange,
    signature: der.subarray(0, length),
    signed: Buffer.concat([bytes.subarray(0, a), bytes.subarray(b, b + c)]),
  }
}

function openingAt(latin: string, at: number): RegExpExecArray | null {
  return /^(\d+) 0 obj\n/.exec(latin.slice(at, at + 24))
}

/** Bytes of a stream object, as they stand. */
export function streamOfObject(value: Buffer): Buffer {
  const from = value.indexOf('stream\n') + 'stream\n'.length
  return value.subarray(from, value.length - '\nendstream'.length)
}

function attachedIn(objects: ReadonlyMap<number, Buffer>): Map<string, Buffer> {
  const textOf = (no: number): string => (objects.get(no) ?? Buffer.alloc(0)).toString('latin1')
  const catalog = [...objects.keys()].map(textOf).find((text) => text.includes('/Type /Catalog')) ?? ''
  const tree = textOf(Number(/\/EmbeddedFiles (\d+) 0 R/.exec(catalog)?.[1]))
  return new Map(
    [...tree.matchAll(/\(([^)]*)\) (\d+) 0 R/g)].map(([, name = '', no]) => {
      const stream = Number(/\/EF <<\s*\/F (\d+) 0 R/.exec(textOf(Number(no)))?.[1])
      return [name, inflateSync(streamOfObject(objects.get(stream) ?? Buffer.alloc(0)))]
    }),
  )
}

/** Lines of a `.jsonl` attachment. */
export function linesOf(file: Buffer | undefined): string[] {
  const text = (file ?? Buffer.alloc(0)).toString()
  if (!text.endsWith('\n')) throw new Error('the last line does not end')
  return text.slice(0, -1).split('\n')
}
