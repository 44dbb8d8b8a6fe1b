import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import type { DossierInput } from './dossier-input'
import type { DossierSeal } from './dossier-seal'
import { type AttachedFile, manifestBytes } from './manifest'

/** The attachments of a sealed dossier in the order of their names (lib/evidence/FORMAT.md, section 5.2). */
export function attachedFiles(
  input: DossierInput,
  seal: DossierSeal,
  formatText: Uint8Array,
  objectOf: (renditionSha256: string) => number | null,
): AttachedFile[] {
  const { facts, checkpoint } = seal
  const files: AttachedFile[] = [
    {
      name: 'checkpoint.txt',
      mediaType: 'text/plain',
      about: 'Signed checkpoint of the log',
      bytes: new TextEncoder().encode(checkpoint.text),
    },
    {
      name: 'facts.jsonl',
      mediaType: 'application/jsonl',
      about: 'The facts, exactly as recorded',
      bytes: linesOf(facts.map((one) => one.factBytes)),
    },
    {
      name: 'format.md',
      mediaType: 'text/markdown',
      about: 'What this record is made of, byte by byte',
      bytes: formatText,
    },
    {
      name: 'inclusion.jsonl',
      mediaType: 'application/jsonl',
      about: 'Proof for each fact that the checkpoint covers it',
      bytes: linesOf(facts.map(({ index, proof }) => canonicalBytes({ index, proof }))),
    },
    {
      name: 'leaves.jsonl',
      mediaType: 'application/jsonl',
      about: 'The leaves of the log for the facts',
      bytes: linesOf(facts.map((one) => one.leafBytes)),
    },
  ]
  const manifest: AttachedFile = {
    name: 'manifest.json',
    mediaType: 'application/json',
    about: 'Photos, verdicts, states and files of this dossier',
    bytes: manifestBytes(input, seal, files, objectOf),
  }
  return [...files, manifest]
}

function linesOf(lines: readonly Uint8Array[]): Uint8Array {
  const end = new Uint8Array([0x0a])
  return Buffer.concat(lines.flatMap((line) => [line, end]))
}
