import { type PdfDict, PdfMalformed, type PdfValue, ValueReader } from './read-value'

/** One object of the file: its value, and where the bytes of its stream lie in the bytes that it was read from. */
export type PdfObject = { no: number; bytes: Uint8Array; value: PdfValue; stream: Uint8Array | null }

/**
 * Parse the bytes from one object's offset to the next: `<no> 0 obj\n`, its value (with a stream of the stated length), `\nendobj\n`, and nothing else.
 * @throws PdfMalformed when they are otherwise
 */
export function parseObject(bytes: Uint8Array, no: number): PdfObject {
  const reader = new ValueReader(bytes)
  if (!reader.take(`${no} 0 obj\n`)) throw new PdfMalformed(`does not begin with "${no} 0 obj"`)
  const value = reader.value()
  let stream: Uint8Array | null = null
  if (value.kind === 'dict' && reader.take('\nstream\n')) {
    const length = value.entries.get('Length')
    if (length?.kind !== 'number' || !Number.isSafeInteger(length.value) || length.value < 0)
      throw new PdfMalformed('a stream without its length')
    stream = bytes.subarray(reader.at, reader.at + length.value)
    reader.at += length.value
    if (!reader.take('\nendstream')) throw new PdfMalformed('a stream of another length')
  }
  if (!reader.take('\nendobj\n') || reader.at !== bytes.length)
    throw new PdfMalformed('does not end where the next begins')
  return { no, bytes, value, stream }
}

/** The value under a key when it is of the kind; else null. */
export function entryOf<K extends PdfValue['kind']>(
  value: PdfValue | undefined,
  key: string,
  kind: K,
): Extract<PdfValue, { kind: K }> | null {
  const found = value?.kind === 'dict' ? value.entries.get(key) : undefined
  return found?.kind === kind ? (found as Extract<PdfValue, { kind: K }>) : null
}

/** Whether a dictionary says this name under this key. */
export function isNamed(value: PdfValue | PdfDict | undefined, key: string, name: string): boolean {
  return entryOf(value, key, 'name')?.name === name
}
