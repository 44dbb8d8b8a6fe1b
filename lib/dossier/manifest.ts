import { createHash } from 'node:crypto'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { type DossierInput, TEMPLATE, VERIFIER } from './dossier-input'
import type { DossierSeal } from './dossier-seal'

export type AttachedFile = { name: string; mediaType: string; about: string; bytes: Uint8Array }

/** The manifest of a sealed dossier in canonical JSON (lib/evidence/FORMAT.md, section 5.3). @param objectOf number of the PDF object with a rendition's bytes, null when it is not printed */
export function manifestBytes(
  input: DossierInput,
  seal: DossierSeal,
  files: readonly AttachedFile[],
  objectOf: (renditionSha256: string) => number | null,
): Uint8Array {
  const { state, head, organisation, isDemo } = input
  const attempts = state.points.flatMap((point) => point.attempts)
  return canonicalBytes({
    v: 1,
    kind: head.kind,
    repair: state.stream,
    revision: head.kind === 'issue' ? head.revision : null,
    purpose: head.kind === 'issue' ? head.purpose : null,
    tenant: seal.tenant,
    organisation,
    isDemo,
    asOf: { moment: state.asOf, size: seal.checkpoint.size },
    rules: state.rules,
    template: TEMPLATE,
    verifier: VERIFIER,
    vkey: seal.checkpoint.vkey,
    streams: byText(seal.streams, (one) => one.stream),
    files: byText(
      files.map(({ name, bytes }) => ({
        name,
        sha256: createHash('sha256').update(bytes).digest('hex'),
        sizeBytes: bytes.length,
      })),
      (one) => one.name,
    ),
    photos: photosOf(input, objectOf),
    likeness: seal.likeness,
    verdicts: attempts
      .flatMap(({ point, attempt, criteria }) =>
        byText(
          criteria.map(({ criterion, verdict }) => ({ point, attempt, criterion: criterion.id, verdict })),
          (one) => one.criterion,
        ),
      )
      .sort(byPlace),
    states: attempts.map(({ point, attempt, state: name }) => ({ point, attempt, state: name })).sort(byPlace),
    earlier: seal.earlier,
  })
}

function photosOf({ facts, state }: DossierInput, objectOf: (sha256: string) => number | null): object[] {
  const own = ofKind(facts, 'photo-attached').filter((fact) => fact.stream === state.stream)
  return byText(own, (fact) => fact.id).map((fact) => {
    const { sha256, sizeBytes, mediaType, rendition } = fact.body.photo
    const object = objectOf(rendition.sha256)
    return {
      fact: fact.id,
      original: { sha256, sizeBytes, mediaType },
      rendition,
      object,
      printed: object === null ? 'missing' : 'yes',
    }
  })
}

/** Sorted by code units, as `<` compares. */
function byText<T>(values: readonly T[], textOf: (value: T) => string): T[] {
  return [...values].sort((a, b) => (textOf(a) < textOf(b) ? -1 : textOf(a) > textOf(b) ? 1 : 0))
}

type Place = { point: string; attempt: number }

function byPlace(a: Place, b: Place): number {
  return a.point < b.point ? -1 : a.point > b.point ? 1 : a.attempt - b.attempt
}
