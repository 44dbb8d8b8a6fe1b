import type { SignatureState } from '@/lib/domain/fold/repair-state'
import { drawnSignaturePicture } from '@/lib/domain/pictures/drawn-signature-picture'
import { showMoment } from '@/lib/domain/time'
import { type Block, paragraph } from '../blocks'
import type { DossierContext } from '../dossier-context'

/** Signatures drawn in person, each under its table as drawn; one whose bytes are not kept any more says so. */
export function drawnSignatures(signatures: readonly SignatureState[], context: DossierContext): Block[] {
  return signatures.flatMap(({ fact }): Block[] => {
    const { method, name, meaning } = fact.body
    const sha256 = method.kind === 'in person' ? method.drawing : undefined
    if (!sha256) return []
    const drawing = context.drawings?.get(sha256)
    const of = `${name}, ${meaning}, ${showMoment(fact.observedAt)}`
    return drawing
      ? [{ kind: 'picture', picture: drawnSignaturePicture(drawing, of), title: `Drawn by ${of}`, maxHeightPt: 60 }]
      : [paragraph(`The signature drawn by ${of} is not kept any more; its digest is ${sha256}.`, 'soft')]
  })
}
