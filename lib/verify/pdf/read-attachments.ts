import type { ByteSource } from '../byte-source'
import type { Ledger } from '../ledger'
import { inflate } from './inflate'
import { latin1 } from './latin1'
import { entryOf, isNamed } from './parse-object'
import { InflateRefused } from './prefix-codes'
import type { Layout } from './read-layout'
import type { PdfValue } from './read-value'
import { readObject } from './walk-objects'

/** The attachments of a dossier and the most that this checker unpacks of each. */
const MOST_BYTES = {
  'checkpoint.txt': 1 << 16,
  'facts.jsonl': 32 << 20,
  'format.md': 1 << 20,
  'inclusion.jsonl': 24 << 20,
  'leaves.jsonl': 16 << 20,
  'manifest.json': 12 << 20,
} as const

export type AttachmentName = keyof typeof MOST_BYTES
export type Attachments = { [K in AttachmentName]: Uint8Array | null }

/** Which objects the catalog names: the specification of each attachment and the stream with its bytes. */
export type AttachmentRefs = { name: AttachmentName; specification: number; stream: number }[]

const NAMES = Object.keys(MOST_BYTES) as AttachmentName[]

/**
 * Find the attachments through the catalog: exactly the six, in order, the same ones associated with the document.
 * Breaks: `attachments-differ`. @source lib/evidence/FORMAT.md section 5.2
 */
export async function findAttachments(
  source: ByteSource,
  layout: Layout,
  catalog: PdfValue,
  ledger: Ledger,
): Promise<AttachmentRefs> {
  const follow = async (value: PdfValue | null): Promise<PdfValue | null> =>
    value?.kind === 'ref' ? ((await readObject(source, layout, value.no))?.value ?? null) : value
  const names = await follow(entryOf(catalog, 'Names', 'dict') ?? entryOf(catalog, 'Names', 'ref'))
  const tree = await follow(
    entryOf(names ?? undefined, 'EmbeddedFiles', 'dict') ?? entryOf(names ?? undefined, 'EmbeddedFiles', 'ref'),
  )
  const pairs = entryOf(tree ?? undefined, 'Names', 'array')?.values ?? []
  const isLeaf = tree?.kind === 'dict' && !tree.entries.has('Kids')
  const refs: AttachmentRefs = []
  for (const [index, name] of NAMES.entries()) {
    const [key, value] = [pairs[2 * index], pairs[2 * index + 1]]
    const specification = value?.kind === 'ref' ? value.no : 0
    const stream = textOf(key) === name ? await streamOf(source, layout, specification, name) : null
    if (stream === null) ledger.broken('attachments-differ', name)
    else refs.push({ name, specification, stream })
  }
  if (!isLeaf || pairs.length !== 2 * NAMES.length) ledger.broken('attachments-differ', 'list of attached files')
  const associated = (entryOf(catalog, 'AF', 'array')?.values ?? []).map((one) => (one.kind === 'ref' ? one.no : 0))
  const isSame =
    associated.length === refs.length && refs.every((one, index) => one.specification === associated[index])
  if (!isSame) ledger.broken('attachments-differ', 'files associated with the document')
  return refs
}

function textOf(value: PdfValue | undefined): string | null {
  return value?.kind === 'text' ? latin1(value.bytes) : null
}

async function streamOf(source: ByteSource, layout: Layout, no: number, name: string): Promise<number | null> {
  const specification = (await readObject(source, layout, no))?.value
  if (!specification || !isNamed(specification, 'Type', 'Filespec')) return null
  if (textOf(entryOf(specification, 'F', 'text') ?? undefined) !== name) return null
  const files = entryOf(specification, 'EF', 'dict') ?? undefined
  const [file, unicode] = [entryOf(files, 'F', 'ref')?.no, entryOf(files, 'UF', 'ref')?.no]
  return file !== undefined && (unicode === undefined || unicode === file) ? file : null
}

/** Unpack the attachments; none takes more memory than its limit. Breaks: `attachment-malformed`, `attachment-too-large`. */
export async function readAttachments(
  source: ByteSource,
  layout: Layout,
  refs: AttachmentRefs,
  ledger: Ledger,
): Promise<Attachments> {
  const read: Attachments = {
    'checkpoint.txt': null,
    'facts.jsonl': null,
    'format.md': null,
    'inclusion.jsonl': null,
    'leaves.jsonl': null,
    'manifest.json': null,
  }
  for (const { name, stream } of refs) {
    const object = await readObject(source, layout, stream)
    const size = entryOf(entryOf(object?.value, 'Params', 'dict') ?? undefined, 'Size', 'number')?.value
    if (size !== undefined && size > MOST_BYTES[name]) {
      ledger.broken('attachment-too-large', name)
      continue
    }
    const isPlain =
      object?.value.kind === 'dict' &&
      isNamed(object.value, 'Filter', 'FlateDecode') &&
      !object.value.entries.has('DecodeParms') &&
      !object.value.entries.has('F')
    if (!isPlain || !object.stream || size === undefined || !Number.isSafeInteger(size) || size < 0) {
      ledger.broken('attachment-malformed', name)
      continue
    }
    try {
      read[name] = inflate(object.stream, size)
    } catch (error) {
      if (!(error instanceof InflateRefused)) throw error
      ledger.broken('attachment-malformed', `${name}: ${error.message}`)
    }
  }
  return read
}
