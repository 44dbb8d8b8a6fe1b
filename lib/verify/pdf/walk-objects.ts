import type { ByteSource } from '../byte-source'
import type { Ledger } from '../ledger'
import { type PdfObject, parseObject } from './parse-object'
import { HEAD, type Layout } from './read-layout'
import { PdfMalformed } from './read-value'

const READ_BYTES = 1 << 20
/** One object held whole at most; a rendition has a third of a megabyte. */
export const OBJECT_BYTES_AT_MOST = 48 << 20

type Piece = { from: number; to: number; numbers: number[]; isTooLarge: boolean }

/**
 * Read the whole file once, from start to end, a megabyte at a time with the next one read ahead: every byte goes to `onBytes` in order, every object to `onObject`.
 * Breaks: `object-malformed`, `object-too-large`.
 */
export async function walkObjects(
  source: ByteSource,
  layout: Layout,
  ledger: Ledger,
  { onBytes, onObject }: { onBytes(bytes: Uint8Array, at: number): void; onObject(object: PdfObject): Promise<void> },
): Promise<void> {
  const pieces = piecesOf(layout)
  let reading = readPiece(source, pieces.next().value)
  for (;;) {
    const read = await reading
    if (read === null) return
    reading = readPiece(source, pieces.next().value)
    reading.catch(() => undefined)
    onBytes(read.bytes, read.piece.from)
    for (const [index, no] of read.piece.numbers.entries()) {
      const from = (layout.offsets[no] ?? 0) - read.piece.from
      const next = read.piece.numbers[index + 1]
      const to = next === undefined ? endWithin(layout, read.piece) : (layout.offsets[next] ?? 0) - read.piece.from
      const object = parsed(read.bytes.subarray(from, to), no, ledger)
      if (object) await onObject(object)
    }
    if (read.piece.isTooLarge) ledger.broken('object-too-large', `offset ${read.piece.from}`)
  }
}

/** Read and parse one object by its number; null when there is none or it is not as it must be. */
export async function readObject(source: ByteSource, layout: Layout, no: number): Promise<PdfObject | null> {
  const from = layout.offsets[no]
  if (no < 1 || from === undefined) return null
  const place = orderOf(layout, from)
  const next = layout.inOrder[place + 1]
  const to = next === undefined ? layout.tableAt : (layout.offsets[next] ?? 0)
  if (to - from > OBJECT_BYTES_AT_MOST) return null
  try {
    return parseObject(await source.read(from, to - from), no)
  } catch (error) {
    if (error instanceof PdfMalformed) return null
    throw error
  }
}

function parsed(bytes: Uint8Array, no: number, ledger: Ledger): PdfObject | null {
  try {
    return parseObject(bytes, no)
  } catch (error) {
    if (!(error instanceof PdfMalformed)) throw error
    ledger.broken('object-malformed', `object ${no}: ${error.message}`)
    return null
  }
}

/** Place in the order of the file of the object at an offset. */
function orderOf({ offsets, inOrder }: Layout, offset: number): number {
  let [low, high] = [0, inOrder.length - 1]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((offsets[inOrder[middle] ?? 0] ?? 0) < offset) low = middle + 1
    else high = middle
  }
  return low
}

function endWithin({ tableAt }: Layout, piece: Piece): number {
  return Math.min(piece.to, tableAt) - piece.from
}

/** The file in pieces: whole objects up to a megabyte together, a larger one alone, one that is too large cut up and not parsed, then table and trailer. */
function* piecesOf({ offsets, inOrder, tableAt, sizeBytes }: Layout): Generator<Piece, null> {
  let piece: Piece = { from: 0, to: HEAD.length, numbers: [], isTooLarge: false }
  for (const [index, no] of inOrder.entries()) {
    const from = offsets[no] ?? 0
    const next = inOrder[index + 1]
    const to = next === undefined ? tableAt : (offsets[next] ?? 0)
    if (to - piece.from > READ_BYTES && piece.to > piece.from) {
      yield piece
      piece = { from, to: from, numbers: [], isTooLarge: false }
    }
    if (to - from > OBJECT_BYTES_AT_MOST) {
      for (let at = from; at < to; at += READ_BYTES)
        yield { from: at, to: Math.min(at + READ_BYTES, to), numbers: [], isTooLarge: at === from }
      piece = { from: to, to, numbers: [], isTooLarge: false }
    } else {
      piece.numbers.push(no)
      piece.to = to
    }
  }
  if (piece.to > piece.from) yield piece
  for (let at = tableAt; at < sizeBytes; at += READ_BYTES)
    yield { from: at, to: Math.min(at + READ_BYTES, sizeBytes), numbers: [], isTooLarge: false }
  return null
}

async function readPiece(source: ByteSource, piece: Piece | null): Promise<{ piece: Piece; bytes: Uint8Array } | null> {
  if (!piece) return null
  const length = piece.to - piece.from
  return { piece, bytes: await (source.readShared?.(piece.from, length) ?? source.read(piece.from, length)) }
}
