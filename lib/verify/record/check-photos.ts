import type { Fact, FactOf } from '@/lib/domain/facts/fact-kinds'
import { ofKind, orderFacts } from '@/lib/domain/fold/order-facts'
import type { Ledger } from '../ledger'
import type { Manifest } from './manifest-schema'

/** A photo object of the file: the digest of its bytes. */
export type PhotoObject = { no: number; sha256: string; sizeBytes: number }

export type PhotoTally = { printed: number; missing: number; disposed: number }

/**
 * Check the photos three ways: the manifest against the file's photo objects, both ways round, and against the facts, both ways round.
 * Breaks: `photo-*`. @returns how many are in the file, how many were not there when it was made, and how many of these a signed disposal removed
 * @source lib/evidence/FORMAT.md sections 5.3, 5.4, 7
 */
export function checkPhotos(
  facts: readonly Fact[],
  manifest: Manifest,
  objects: readonly PhotoObject[],
  ledger: Ledger,
): PhotoTally {
  const own = ofKind(orderFacts(facts, manifest.asOf.moment), 'photo-attached').filter(
    (fact) => fact.stream === manifest.repair,
  )
  const byId = new Map(own.map((fact) => [fact.id, fact]))
  const byNo = new Map(objects.map((object) => [object.no, object]))
  const disposed = new Set(ofKind(facts, 'disposed').map((fact) => fact.body.sha256))
  const named = new Set<number>()
  const tally: PhotoTally = { printed: 0, missing: 0, disposed: 0 }
  for (const entry of manifest.photos) {
    const place = `photo ${entry.fact}`
    const fact = byId.get(entry.fact)
    if (!fact) ledger.broken('photo-entry', place)
    else if (!agrees(entry, fact)) ledger.broken('photo-fact', place)
    if ((entry.object === null) !== (entry.printed === 'missing')) ledger.broken('photo-fact', place)
    if (entry.object === null) {
      const isDisposed = disposed.has(entry.original.sha256) || disposed.has(entry.rendition.sha256)
      tally[isDisposed ? 'disposed' : 'missing'] += 1
      continue
    }
    named.add(entry.object)
    const object = byNo.get(entry.object)
    if (!object) ledger.broken('photo-missing', `${place}, object ${entry.object}`)
    else if (object.sha256 !== entry.rendition.sha256 || object.sizeBytes !== entry.rendition.sizeBytes)
      ledger.broken('photo-digest', `${place}, object ${entry.object}`)
    else tally.printed += 1
  }
  const entered = new Set(manifest.photos.map((entry) => entry.fact))
  for (const fact of own) if (!entered.has(fact.id)) ledger.broken('photo-entry', `photo ${fact.id}`)
  for (const { no } of objects) if (!named.has(no)) ledger.broken('photo-not-named', `object ${no}`)
  return tally
}

function agrees({ original, rendition }: Manifest['photos'][number], { body }: FactOf<'photo-attached'>): boolean {
  const { photo } = body
  return (
    original.sha256 === photo.sha256 &&
    original.sizeBytes === photo.sizeBytes &&
    original.mediaType === photo.mediaType &&
    rendition.sha256 === photo.rendition.sha256 &&
    rendition.sizeBytes === photo.rendition.sizeBytes &&
    rendition.widthPx === photo.rendition.widthPx &&
    rendition.heightPx === photo.rendition.heightPx
  )
}
