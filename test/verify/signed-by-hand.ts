import { nodeHasher } from '@/lib/cli/file-source'
import { buildCms, type TimeStamper } from '@/lib/dossier/sign/build-cms'
import type { SigningIdentity } from '@/lib/dossier/sign/certificate'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import type { Answer } from '@/lib/verify/answer'
import { sourceOfBytes } from '@/lib/verify/byte-source'
import type { Manifest } from '@/lib/verify/record/manifest-schema'
import { type Given, parseTrusted } from '@/lib/verify/trusted'
import { verifyFile } from '@/lib/verify/verify-file'
import { contentsByHand, type DossierContents } from './dossier-by-hand'
import { type Holder, holderByHand, receivedByHand } from './holder-by-hand'
import { type LogByHand, logByHand, sha256Hex } from './log-by-hand'
import { type PdfParts, pdfByHand } from './pdf-by-hand'

type Changes = Partial<PdfParts> & { changeDer?: (der: Uint8Array) => Uint8Array; stamp?: TimeStamper }

/** A file of these contents signed by an identity; the DER may be changed once it is made. */
export async function signedFile(
  contents: DossierContents,
  identity: SigningIdentity,
  { changeDer = (der) => der, stamp, ...parts }: Changes = {},
): Promise<Uint8Array> {
  let covered: Uint8Array = new Uint8Array()
  pdfByHand({
    ...contents,
    ...parts,
    sign(digest) {
      covered = digest
      return new Uint8Array()
    },
  })
  const der = changeDer(await buildCms(covered, identity, stamp ?? null))
  return pdfByHand({ ...contents, ...parts, sign: () => der })
}

/** The world that most tests start from: a holder, the log of the demonstration, the contents of one dossier. */
export async function preparedWorld(
  number = 'MD-0043',
): Promise<{ holder: Holder; log: LogByHand; contents: DossierContents; file: Uint8Array }> {
  const holder = await holderByHand(7)
  const log = logByHand(receivedByHand(holder), holder.origin)
  const contents = contentsByHand(log, holder, number)
  return { holder, log, contents, file: await signedFile(contents, holder.identity) }
}

/** Check bytes as the command does. */
export async function check(file: Uint8Array, given: Given = {}): Promise<Answer> {
  const trusted = parseTrusted(given)
  if (!trusted.ok) throw new Error(trusted.error.code)
  return verifyFile(sourceOfBytes(file), { trusted: trusted.value, hasher: nodeHasher })
}

/** Codes of the breaks, each once, in order. */
export function codesOf(answer: Answer): string[] {
  return [...new Set(answer.breaks.map((one) => one.code))].sort()
}

/** Contents with one attachment changed and the manifest told of it, or not. */
export function withAttachment(
  contents: DossierContents,
  name: string,
  change: (bytes: Uint8Array) => Uint8Array,
  isTold = true,
): DossierContents {
  const attachments = contents.attachments.map((one) => (one.name === name ? { name, bytes: change(one.bytes) } : one))
  return isTold ? withManifest({ ...contents, attachments }, (manifest) => manifest) : { ...contents, attachments }
}

/** Contents with a changed manifest that states the attachments as they are. */
export function withManifest(contents: DossierContents, change: (manifest: Manifest) => Manifest): DossierContents {
  const files = contents.attachments
    .filter((one) => one.name !== 'manifest.json')
    .map(({ name, bytes }) => ({
      name,
      sha256: sha256Hex(bytes) as Manifest['files'][number]['sha256'],
      sizeBytes: bytes.length,
    }))
  const manifest = change({ ...contents.manifest, files })
  const attachments = contents.attachments.map((one) =>
    one.name === 'manifest.json' ? { name: one.name, bytes: canonicalBytes(manifest) } : one,
  )
  return { ...contents, attachments, manifest }
}

/** Bytes with their text changed. */
export function edited(bytes: Uint8Array, change: (text: string) => string): Uint8Array {
  return new TextEncoder().encode(change(new TextDecoder().decode(bytes)))
}

/** Text without its last line. */
export function withoutLastLine(text: string): string {
  return `${text.split('\n').slice(0, -2).join('\n')}\n`
}
