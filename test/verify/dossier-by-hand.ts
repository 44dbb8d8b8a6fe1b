import { createPrivateKey } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { FactId, PersonId, StreamId } from '@/lib/domain/facts/fact'
import { type Fact, parseFact } from '@/lib/domain/facts/fact-kinds'
import { citesOf } from '@/lib/domain/fold/cites-of'
import { foldRepair, RULES } from '@/lib/domain/fold/fold-repair'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { type SigningIdentity, signingIdentity } from '@/lib/dossier/sign/certificate'
import { makeCertificate } from '@/lib/dossier/sign/make-certificate'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { type LogKey, makeLogKey } from '@/lib/evidence/log-key'
import { demoFacts } from '@/lib/server/demo/demo-facts'
import { DEMO_START } from '@/lib/server/demo/demo-time'
import type { PhotoBook } from '@/lib/server/demo/photo-drawing'
import type { Manifest } from '@/lib/verify/record/manifest-schema'
import { type LogByHand, linesOf, type Received, sha256Hex } from './log-by-hand'
import { FIRST_PHOTO } from './pdf-by-hand'

/** Who signs: a log key and a certificate with its key. */
export type Holder = { origin: string; key: LogKey; identity: SigningIdentity }

/** A holder with keys of its own. */
export async function holderByHand(seedByte: number, storeId = '00112233445566aa'): Promise<Holder> {
  const origin = `underwrap-demo/${storeId}/tenant-a`
  const { certificate, key } = await makeCertificate(
    'Plumbline-and-Thrice Inspection',
    new Date('2026-05-01T00:00:00Z'),
  )
  return {
    origin,
    key: makeLogKey(origin, new Uint8Array(32).fill(seedByte)),
    identity: signingIdentity(
      certificate,
      createPrivateKey({ key: Buffer.from(key), format: 'der', type: 'pkcs8' }),
      true,
      new Date('2026-05-02T00:00:00Z'),
    ),
  }
}

/** Bytes that stand for the rendition of a drawing: what they show is nothing to a checker. */
export const photoBytes = new Map<string, Uint8Array>()
const bookOf =
  (sizeBytes: number): PhotoBook =>
  (drawing) => {
    const bytes = new TextEncoder().encode(`rendition of ${drawing.key} `.padEnd(sizeBytes, drawing.key))
    const sha256 = sha256Hex(bytes)
    photoBytes.set(sha256, bytes)
    const face = { sha256, sizeBytes: bytes.length, widthPx: 1, heightPx: 1 }
    return {
      ...face,
      mediaType: 'image/jpeg',
      rendition: face,
      thumb: face,
      claims: {
        takenAt: drawing.takenAt,
        offset: null,
        latitude: null,
        longitude: null,
        camera: null,
        hasOriginalMetadata: true,
      },
      measures: {
        sharpness: 1,
        meanLightness: 0.5,
        shareDark: 0,
        shareBright: 0,
        dHash: sha256.slice(0, 16),
        pHash: sha256.slice(16, 32),
      },
    }
  }

let made = 0
/** A fact of any stream, parsed as a received one is. @throws Error when it is none */
export function factOf(stream: string, kind: string, body: unknown, at = '2026-05-01T08:00:00+01:00'): Fact {
  made += 1
  const id = FactId.parse(`0196d000-0000-7000-8000-${String(made).padStart(12, '0')}`)
  const moment = { observedAt: at, observedBy: 'QI', enteredAt: at, enteredBy: 'QI' }
  const parsed = parseFact({ v: 1, id, stream, kind, ...moment, device: { id: 'tab-1', clockOffsetMs: 0 }, body })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.error.faults))
  return parsed.value
}

/** The demonstration's facts in order of receipt, the holder's keys before them. */
export function receivedByHand({ key, identity }: Holder, photoBytesEach = 60): Received[] {
  const { sha256, subject, notBefore, notAfter } = identity.certificate
  const receipt = { receivedAt: '2026-05-01T08:00:10+01:00', receivedBy: PersonId.parse('QI') }
  return [
    {
      fact: factOf('key:log', 'log-key-taken', {
        vkey: key.vkey.text,
        replaces: null,
        endorsement: null,
        reason: 'first key of this log',
      }),
      ...receipt,
    },
    {
      fact: factOf('key:signature', 'signing-certificate-taken', {
        certificateSha256: sha256,
        subject,
        notBefore,
        notAfter,
        madeHere: true,
        reason: 'made at the start',
      }),
      ...receipt,
    },
    ...demoFacts(bookOf(photoBytesEach)).facts,
  ]
}

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
