import { readFileSync } from 'node:fs'
import { StreamId } from '@/lib/domain/facts/fact'
import { citesOf } from '@/lib/domain/fold/cites-of'
import { foldRepair, RULES } from '@/lib/domain/fold/fold-repair'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { DEMO_START } from '@/lib/server/demo/demo-time'
import type { Manifest } from '@/lib/verify/record/manifest-schema'
import { type Holder, photoBytes } from './holder-by-hand'
import { type LogByHand, linesOf, sha256Hex } from './log-by-hand'
import { FIRST_PHOTO } from './pdf-by-hand'

export type DossierContents = {
  attachments: { name: string; bytes: Uint8Array }[]
  photos: { bytes: Uint8Array }[]
  manifest: Manifest
}

const FORMAT = new Uint8Array(readFileSync(new URL('../../lib/evidence/FORMAT.md', import.meta.url))).slice(0, 4000)

/** What a dossier of one repair holds, as the format demands, from a log. A test may change the manifest before the attachments are put together. */
export function contentsByHand(
  log: LogByHand,
  holder: Holder,
  number: string,
  change: (manifest: Manifest) => Manifest = (manifest) => manifest,
): DossierContents {
  const repair = StreamId.parse(`repair:${number}`)
  const size = log.facts.length
  const own = log.facts.filter((one) => one.fact.stream === repair)
  const streams = new Set<string>([
    repair,
    'key:log',
    'key:signature',
    `dossier:${number}`,
    ...own.flatMap((one) => citesOf(one.fact)),
  ])
  const lines = log.facts.filter((one) => streams.has(one.fact.stream))
  const facts = lines.map((one) => one.fact)
  const photos = ofKind(facts, 'photo-attached')
    .filter((fact) => fact.stream === repair)
    .sort((a, b) => (a.id < b.id ? -1 : 1))
  const files = [
    { name: 'checkpoint.txt', bytes: new TextEncoder().encode(log.checkpoint(holder.key)) },
    { name: 'facts.jsonl', bytes: linesOf(lines.map((one) => one.factBytes)) },
    { name: 'format.md', bytes: FORMAT },
    {
      name: 'inclusion.jsonl',
      bytes: linesOf(lines.map(({ index }) => canonicalBytes({ index, proof: log.inclusion(index, size) }))),
    },
    { name: 'leaves.jsonl', bytes: linesOf(lines.map((one) => one.leafBytes)) },
  ]
  const counts = new Map<StreamId, number>()
  for (const { stream } of facts) counts.set(stream, (counts.get(stream) ?? 0) + 1)
  const receipts = Object.fromEntries(
    lines.map(({ fact, leafBytes }) => [fact.id, JSON.parse(new TextDecoder().decode(leafBytes))]),
  )
  const digests = new Map(
    lines.map(({ fact, leafBytes }) => [fact.id, JSON.parse(new TextDecoder().decode(leafBytes)).sha256]),
  )
  const state = foldRepair(facts, repair, DEMO_START, { receipts, likeness: [], sha256Of: (id) => digests.get(id) })
  const attempts = state.points.flatMap((point) => point.attempts)
  const manifest = change({
    v: 1,
    kind: 'for review',
    repair,
    revision: null,
    purpose: null,
    tenant: log.tenant,
    organisation: 'Plumbline-and-Thrice Inspection',
    isDemo: true,
    asOf: { moment: DEMO_START, size },
    rules: RULES,
    template: 'dossier 2',
    verifier: 'verify 1',
    vkey: holder.key.vkey.text,
    streams: [...counts].map(([stream, length]) => ({ stream, length })).sort((a, b) => (a.stream < b.stream ? -1 : 1)),
    files: files.map(({ name, bytes }) => ({
      name,
      sha256: sha256Hex(bytes) as Manifest['files'][number]['sha256'],
      sizeBytes: bytes.length,
    })),
    photos: photos.map(({ id, body: { photo } }, index) => ({
      fact: id,
      original: { sha256: photo.sha256, sizeBytes: photo.sizeBytes, mediaType: photo.mediaType },
      rendition: photo.rendition,
      object: FIRST_PHOTO + index,
      printed: 'yes',
    })),
    likeness: [],
    verdicts: attempts
      .flatMap(({ point, attempt, criteria }) =>
        criteria.map(({ criterion, verdict }) => ({ point, attempt, criterion: criterion.id, verdict })),
      )
      .sort((a, b) => compare(a.point, b.point) || a.attempt - b.attempt || compare(a.criterion, b.criterion)),
    states: attempts
      .map(({ point, attempt, state: name }) => ({ point, attempt, state: name }))
      .sort((a, b) => compare(a.point, b.point) || a.attempt - b.attempt),
    earlier: [],
  })
  return {
    attachments: [...files, { name: 'manifest.json', bytes: canonicalBytes(manifest) }],
    photos: photos.map(({ body: { photo } }) => ({
      bytes: photoBytes.get(photo.rendition.sha256) ?? new Uint8Array(),
    })),
    manifest,
  }
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}
