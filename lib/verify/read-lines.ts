import type { ByteSource } from './byte-source'

const READ_BYTES = 1 << 20
const LINE_AT_MOST = 4 << 20

/**
 * The lines of a text without their line breaks, read a megabyte at a time. Null, and then nothing more, for a line of more than four megabytes or a last line without its
 * break. A line's bytes are good until the next is asked for.
 */
export async function* readLines(
  source: ByteSource,
  onProgress: (doneBytes: number) => void,
): AsyncGenerator<Uint8Array | null, undefined> {
  let rest: Uint8Array = new Uint8Array(0)
  for (let at = 0; at < source.sizeBytes; at += READ_BYTES) {
    const read = await source.read(at, Math.min(READ_BYTES, source.sizeBytes - at))
    const bytes = joined(rest, read)
    let from = 0
    for (let end = bytes.indexOf(0x0a, rest.length); end >= 0; end = bytes.indexOf(0x0a, from)) {
      yield bytes.subarray(from, end)
      from = end + 1
    }
    rest = bytes.subarray(from)
    if (rest.length > LINE_AT_MOST) {
      yield null
      return undefined
    }
    onProgress(at + read.length)
  }
  if (rest.length > 0) yield null
  return undefined
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  if (a.length === 0) return b
  const bytes = new Uint8Array(a.length + b.length)
  bytes.set(a)
  bytes.set(b, a.length)
  return bytes
}
