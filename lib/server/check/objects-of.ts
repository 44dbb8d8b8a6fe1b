import type { Sha256 } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'

/** A stored object that a fact cites by its digest. What may lie outside the store is checked only where it is stored. */
export type CitedObject = { sha256: Sha256; sizeBytes: number | null; what: string; mustBeStored: boolean }

/** Objects of the photo store that a fact cites. */
export function objectsOf(fact: Fact): CitedObject[] {
  const of = `of fact ${fact.id} in ${fact.stream}`
  const outside = (sha256: Sha256 | undefined, name: string): CitedObject[] =>
    sha256 === undefined ? [] : [{ sha256, sizeBytes: null, what: `${name} ${of}`, mustBeStored: false }]
  switch (fact.kind) {
    case 'photo-attached': {
      const { photo } = fact.body
      const parts = { 'original photo': photo, rendition: photo.rendition, thumbnail: photo.thumb }
      return Object.entries(parts).map(([name, { sha256, sizeBytes }]) => ({
        sha256,
        sizeBytes,
        what: `${name} ${of}`,
        mustBeStored: true,
      }))
    }
    case 'dossier-issued': {
      const { sha256, sizeBytes, repair, revision } = fact.body
      return [{ sha256, sizeBytes, what: `dossier ${repair} revision ${revision}`, mustBeStored: true }]
    }
    case 'signed': {
      const { method } = fact.body
      return method.kind === 'in person' && method.drawing
        ? [{ sha256: method.drawing, sizeBytes: null, what: `drawn signature ${of}`, mustBeStored: true }]
        : []
    }
    case 'batch-received':
      return outside(fact.body.certificateFile, 'certificate')
    default:
      return 'file' in fact.body ? outside(fact.body.file, 'file') : []
  }
}
