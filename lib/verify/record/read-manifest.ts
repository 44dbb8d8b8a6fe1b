import { parseCanonical } from '@/lib/evidence/parse-canonical'
import type { Ledger } from '../ledger'
import type { AttachmentName, Attachments } from '../pdf/read-attachments'
import { Manifest } from './manifest-schema'

const PLACE = 'manifest.json'

/** Size and SHA-256 (hex) of the attachments that could be unpacked. */
export type AttachmentDigests = Partial<Record<AttachmentName, { sha256: string; sizeBytes: number }>>

/**
 * Read the manifest and compare the other attachments with the digests that it states. Null when it is none.
 * Breaks: `manifest-malformed`, `manifest-order`, `attachment-digest`; `version-unknown` makes the file unreadable where nothing else is wrong.
 */
export function readManifest(attachments: Attachments, digests: AttachmentDigests, ledger: Ledger): Manifest | null {
  const bytes = attachments[PLACE]
  if (!bytes) return null
  const value = parseCanonical(bytes)
  if (!value.ok) {
    ledger.broken('manifest-malformed', `${PLACE}: ${value.error.code}`)
    return null
  }
  const version = value.value !== null && typeof value.value === 'object' && 'v' in value.value ? value.value.v : null
  if (typeof version === 'number' && version !== 1 && ledger.breakCount === 0)
    ledger.unreadable('version-unknown', `${PLACE}: version ${version}`)
  const parsed = Manifest.safeParse(value.value)
  if (!parsed.success) {
    for (const issue of parsed.error.issues.slice(0, 20))
      ledger.broken('manifest-malformed', `${PLACE}: ${issue.path.join('.') || 'members'}`)
    return null
  }
  compareFiles(parsed.data, attachments, digests, ledger)
  checkOrder(parsed.data, ledger)
  return parsed.data
}

function compareFiles({ files }: Manifest, attachments: Attachments, digests: AttachmentDigests, ledger: Ledger): void {
  const names = (Object.keys(attachments) as AttachmentName[]).filter((name) => name !== PLACE)
  if (files.length !== names.length || names.some((name, index) => files[index]?.name !== name))
    ledger.broken('manifest-malformed', `${PLACE}: files`)
  for (const name of names) {
    const own = digests[name]
    const stated = files.find((one) => one.name === name)
    if (own && stated && (own.sizeBytes !== stated.sizeBytes || own.sha256 !== stated.sha256))
      ledger.broken('attachment-digest', name)
  }
}

function checkOrder({ streams, photos, verdicts, states, earlier }: Manifest, ledger: Ledger): void {
  const lists: [string, string[]][] = [
    ['streams', streams.map((one) => one.stream)],
    ['photos', photos.map((one) => one.fact)],
    ['verdicts', verdicts.map((one) => `${keyOf(one)} ${one.criterion}`)],
    ['states', states.map(keyOf)],
    ['earlier', earlier.map((one) => padded(one.revision))],
  ]
  for (const [name, keys] of lists)
    if (keys.some((key, index) => index > 0 && key <= (keys[index - 1] ?? '')))
      ledger.broken('manifest-order', `${PLACE}: ${name}`)
}

function keyOf({ point, attempt }: { point: string; attempt: number }): string {
  return `${point} ${padded(attempt)}`
}

function padded(number: number): string {
  return String(number).padStart(12, '0')
}
