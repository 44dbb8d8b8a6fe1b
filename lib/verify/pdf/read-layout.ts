import type { ByteSource } from '../byte-source'
import type { Ledger } from '../ledger'
import { latin1 } from './latin1'
import { entryOf } from './parse-object'
import { type PdfDict, ValueReader } from './read-value'

/** Where every object of the file lies. Offsets by number; the numbers in the order of the file. */
export type Layout = {
  /** Size of the file without what was appended to it. */
  sizeBytes: number
  tableAt: number
  offsets: Float64Array
  inOrder: Uint32Array
  root: number
}

export const HEAD = '%PDF-1.7\n%\x81\x81\x81\x81\n'
const ROW_BYTES = 20
const OBJECTS_AT_MOST = 500_000
const END_BYTES = 4096
const TRAILER_KEYS: ReadonlySet<string> = new Set(['Size', 'Root', 'Info', 'ID'])
const END = /startxref\n(0|[1-9]\d{0,14})\n%%EOF\n$/

/**
 * Read head, cross-reference table and trailer, and nothing else. Memory grows with the number of objects alone.
 * Breaks: `bytes-appended`, `update-appended` (the file before them is read on), `file-cut`, `too-large`, `table-malformed`, `trailer-malformed`.
 * @source lib/evidence/FORMAT.md section 5.1
 */
export async function readLayout(source: ByteSource, ledger: Ledger): Promise<Layout> {
  const whole = await endOf(source, source.sizeBytes)
  const first =
    whole === null || (await hasPrev(source, whole.tableAt, source.sizeBytes)) ? await firstEnd(source) : null
  if (whole === null && first === null) ledger.unreadable('file-cut', 'end of file')
  if (first !== null && first < source.sizeBytes)
    ledger.broken(
      whole ? 'update-appended' : 'bytes-appended',
      `${source.sizeBytes - first} bytes from offset ${first}`,
    )
  const sizeBytes = first ?? source.sizeBytes
  const end = await endOf(source, sizeBytes)
  if (end === null) return ledger.unreadable('file-cut', 'end of file')
  return readTable(source, sizeBytes, end.tableAt, ledger)
}

async function endOf(source: ByteSource, sizeBytes: number): Promise<{ tableAt: number } | null> {
  const length = Math.min(64, sizeBytes)
  const found = END.exec(latin1(await source.read(sizeBytes - length, length)))
  return found ? { tableAt: Number(found[1]) } : null
}

async function hasPrev(source: ByteSource, tableAt: number, sizeBytes: number): Promise<boolean> {
  const from = Math.max(tableAt, sizeBytes - END_BYTES)
  return from < sizeBytes && latin1(await source.read(from, sizeBytes - from)).includes('/Prev')
}

/** Offset behind the first whole end of a file in these bytes, or null. */
async function firstEnd(source: ByteSource): Promise<number | null> {
  const [step, overlap] = [1 << 20, 64]
  for (let at = 0; at < source.sizeBytes; at += step) {
    const from = Math.max(0, at - overlap)
    const bytes = await source.read(from, Math.min(source.sizeBytes, at + step) - from)
    for (let sign = bytes.indexOf(0x25); sign >= 0; sign = bytes.indexOf(0x25, sign + 1)) {
      if (latin1(bytes.subarray(sign, sign + 6)) !== '%%EOF\n') continue
      const found = END.exec(latin1(bytes.subarray(Math.max(0, sign - 32), sign + 6)))
      if (found && Number(found[1]) < from + sign) return from + sign + 6
    }
  }
  return null
}

async function readTable(source: ByteSource, sizeBytes: number, tableAt: number, ledger: Ledger): Promise<Layout> {
  const lengthBytes = sizeBytes - tableAt
  if (tableAt < HEAD.length || lengthBytes < 0) ledger.fatal('table-malformed', `offset ${tableAt}`)
  if (lengthBytes > OBJECTS_AT_MOST * ROW_BYTES + END_BYTES) ledger.unreadable('too-large', 'table of objects')
  const bytes = await source.read(tableAt, lengthBytes)
  const head = /^xref\n0 ([1-9]\d{0,6})\n0000000000 65535 f \n/.exec(latin1(bytes.subarray(0, 64)))
  if (!head) return ledger.fatal('table-malformed', `offset ${tableAt}`)
  const size = Number(head[1])
  const rowsAt = head[0].length
  const rowsEnd = rowsAt + (size - 1) * ROW_BYTES
  if (size < 2 || size > OBJECTS_AT_MOST || rowsEnd > bytes.length) ledger.fatal('table-malformed', `offset ${tableAt}`)
  const offsets = new Float64Array(size)
  for (let no = 1; no < size; no += 1) {
    const offset = offsetOf(bytes, rowsAt + (no - 1) * ROW_BYTES)
    if (offset === null || offset < HEAD.length || offset >= tableAt)
      ledger.fatal('table-malformed', `row of object ${no}`)
    else offsets[no] = offset
  }
  const inOrder = Uint32Array.from({ length: size - 1 }, (_, index) => index + 1).sort(
    (a, b) => (offsets[a] ?? 0) - (offsets[b] ?? 0),
  )
  for (const [index, no] of inOrder.entries()) {
    const before = index === 0 ? 0 : (offsets[inOrder[index - 1] ?? 0] ?? 0)
    const isWrong = index === 0 ? offsets[no] !== HEAD.length : (offsets[no] ?? 0) <= before
    if (isWrong) ledger.fatal('table-malformed', `row of object ${no}`)
  }
  const root = readTrailer(bytes.subarray(rowsEnd), size, tableAt, ledger)
  return { sizeBytes, tableAt, offsets, inOrder, root }
}

/** The offset in a row of the table, `dddddddddd 00000 n \n`; null when the row is otherwise. */
function offsetOf(bytes: Uint8Array, at: number): number | null {
  let offset = 0
  for (let index = 0; index < 10; index += 1) {
    const digit = (bytes[at + index] ?? 0) - 0x30
    if (digit < 0 || digit > 9) return null
    offset = offset * 10 + digit
  }
  return latin1(bytes.subarray(at + 10, at + ROW_BYTES)) === ' 00000 n \n' ? offset : null
}

function readTrailer(bytes: Uint8Array, size: number, tableAt: number, ledger: Ledger): number {
  const trailer = trailerOf(bytes, tableAt)
  const root = trailer && entryOf(trailer, 'Root', 'ref')?.no
  if (!trailer || !root || root >= size || entryOf(trailer, 'Size', 'number')?.value !== size)
    return ledger.fatal('trailer-malformed', 'trailer')
  if (trailer.entries.has('Prev')) ledger.broken('update-appended', 'trailer')
  if ([...trailer.entries.keys()].some((key) => !TRAILER_KEYS.has(key) && key !== 'Prev'))
    ledger.broken('trailer-malformed', 'trailer')
  return root
}

function trailerOf(bytes: Uint8Array, tableAt: number): PdfDict | null {
  try {
    const reader = new ValueReader(bytes)
    if (!reader.take('trailer\n')) return null
    const value = reader.value()
    const isEnd = reader.take(`\nstartxref\n${tableAt}\n%%EOF\n`) && reader.at === bytes.length
    return value.kind === 'dict' && isEnd ? value : null
  } catch {
    return null
  }
}
