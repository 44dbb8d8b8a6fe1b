import type { ByteSource } from '../byte-source'
import type { Ledger } from '../ledger'
import { latin1 } from './latin1'
import { entryOf, isNamed, type PdfObject } from './parse-object'
import type { Layout } from './read-layout'
import type { PdfValue } from './read-value'
import { readObject } from './walk-objects'

/** The file's one signature: what of the file it leaves out, and the DER that stands there. */
export type SignatureField = { no: number; gapFrom: number; gapTo: number; der: Uint8Array | null }

const CONTENTS_AT_MOST = 1 << 20
const RANGE = /^\[0 (0|[1-9]\d*) (0|[1-9]\d*) (0|[1-9]\d*) *\]$/

/**
 * Find the one signature through the catalog and check its byte range and the writing of its contents.
 * Breaks: `signature-missing`, `more-signatures`, `byte-range`, `contents-malformed`, `contents-upper-case`, `padding-not-zero`.
 * @source lib/evidence/FORMAT.md section 5.5
 */
export async function readSignatureField(
  source: ByteSource,
  layout: Layout,
  catalog: PdfValue,
  ledger: Ledger,
): Promise<SignatureField | null> {
  const form = await follow(source, layout, entryOf(catalog, 'AcroForm', 'dict') ?? entryOf(catalog, 'AcroForm', 'ref'))
  const fields = entryOf(form ?? undefined, 'Fields', 'array')?.values ?? []
  const [only] = fields
  if (fields.length > 1) ledger.broken('more-signatures', 'form')
  const field = only?.kind === 'ref' ? await readObject(source, layout, only.no) : null
  const no = isNamed(field?.value, 'FT', 'Sig') ? entryOf(field?.value, 'V', 'ref')?.no : undefined
  const signature = no === undefined ? null : await readObject(source, layout, no)
  if (!signature || !isSignature(signature.value)) {
    ledger.broken('signature-missing', 'form')
    return null
  }
  return readContents(signature, layout, ledger)
}

/** Whether a value is the dictionary of a signature. */
export function isSignature(value: PdfValue): boolean {
  return (
    isNamed(value, 'Type', 'Sig') &&
    isNamed(value, 'Filter', 'Adobe.PPKLite') &&
    isNamed(value, 'SubFilter', 'ETSI.CAdES.detached')
  )
}

async function follow(source: ByteSource, layout: Layout, value: PdfValue | null): Promise<PdfValue | null> {
  return value?.kind === 'ref' ? ((await readObject(source, layout, value.no))?.value ?? null) : value
}

function readContents(signature: PdfObject, layout: Layout, ledger: Ledger): SignatureField | null {
  const { no, bytes, value } = signature
  const place = `object ${no}`
  const contents = entryOf(value, 'Contents', 'hex')
  const range = entryOf(value, 'ByteRange', 'array')
  if (!contents || !range) {
    ledger.broken('signature-missing', place)
    return null
  }
  const start = layout.offsets[no] ?? 0
  const [gapFrom, gapTo] = [start + contents.at, start + contents.end]
  const stated = RANGE.exec(latin1(bytes.subarray(range.at, Math.min(range.end, range.at + 200))))
  const expected = [gapFrom, gapTo, layout.sizeBytes - gapTo].map(String)
  if (!stated || expected.some((number, index) => stated[index + 1] !== number)) ledger.broken('byte-range', place)
  return { no, gapFrom, gapTo, der: readHex(bytes.subarray(contents.at + 1, contents.end - 1), place, ledger) }
}

/** The DER value in lower-case hex with zeros behind it. */
function readHex(hex: Uint8Array, place: string, ledger: Ledger): Uint8Array | null {
  if (hex.length % 2 !== 0 || hex.length > CONTENTS_AT_MOST) {
    ledger.broken('contents-malformed', place)
    return null
  }
  const bytes = new Uint8Array(hex.length / 2)
  let isUpper = false
  for (let at = 0; at < hex.length; at += 1) {
    const sign = hex[at] ?? 0
    const isLetter = sign >= 0x61 && sign <= 0x66
    const isUpperLetter = sign >= 0x41 && sign <= 0x46
    if (!isLetter && !isUpperLetter && !(sign >= 0x30 && sign <= 0x39)) {
      ledger.broken('contents-malformed', `${place}, digit ${at + 1}`)
      return null
    }
    isUpper ||= isUpperLetter
    const digit = isLetter ? sign - 0x57 : isUpperLetter ? sign - 0x37 : sign - 0x30
    bytes[at >> 1] = ((bytes[at >> 1] ?? 0) << 4) | digit
  }
  if (isUpper) ledger.broken('contents-upper-case', place)
  const end = derEnd(bytes)
  if (end === null) {
    ledger.broken('signature-not-der', place)
    return null
  }
  if (bytes.subarray(end).some((byte) => byte !== 0)) ledger.broken('padding-not-zero', place)
  return bytes.subarray(0, end)
}

/** Where the first value ends by its own length, one of DER's definite forms. */
function derEnd(bytes: Uint8Array): number | null {
  const first = bytes[1] ?? 0
  if (first < 0x80) return 2 + first <= bytes.length ? 2 + first : null
  const lengthBytes = first - 0x80
  if (lengthBytes < 1 || lengthBytes > 3) return null
  let length = 0
  for (let index = 0; index < lengthBytes; index += 1) length = length * 256 + (bytes[2 + index] ?? 0)
  const end = 2 + lengthBytes + length
  return end <= bytes.length ? end : null
}
