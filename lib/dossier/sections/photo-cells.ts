import { showClaimedTime } from '@/lib/domain/claimed-time'
import { streamName } from '@/lib/domain/facts/fact'
import type { PhotoFlag } from '@/lib/domain/fold/repair-state'
import { showMoment } from '@/lib/domain/time'
import { mono, type PhotoCell, plain, type Span, strong } from '../blocks'
import { type DossierContext, isScan, type NumberedPhoto } from '../dossier-context'

/** Photos with their captions. `short` for a point's own page; `full` with claims of the file, flags, decisions and whole digests. */
export function photoCells(
  photos: readonly NumberedPhoto[],
  context: DossierContext,
  length: 'short' | 'full',
): PhotoCell[] {
  return photos.map((one) => {
    const { photo } = one.photo.fact.body
    return {
      isReadable: one.isReadable,
      rendition: photo.rendition,
      lines: length === 'short' ? shortLines(one) : fullLines(one, context),
    }
  })
}

function nameLine({ no, photo, attempt }: NumberedPhoto): Span[] {
  const { mark, caption } = photo.fact.body
  return [
    strong(`${no}  `),
    strong(isScan({ photo }) ? `SCAN OF PAPER, NO PHOTO: ${caption}` : caption),
    plain(`  point ${attempt.point}/${attempt.attempt}${mark ? `, ${mark}` : ''}`, 'soft'),
  ]
}

function shortLines(one: NumberedPhoto): Span[][] {
  const { photo } = one.photo.fact.body
  return [
    nameLine(one),
    [plain(takenLine(one))],
    [mono(`SHA-256 ${photo.sha256.slice(0, 12)}…${photo.sha256.slice(-4)}`, 'soft')],
    ...flagLines(one),
  ]
}

function fullLines(one: NumberedPhoto, context: DossierContext): Span[][] {
  const { fact } = one.photo
  const { photo } = fact.body
  const { claims } = photo
  const place =
    claims.latitude !== null && claims.longitude !== null
      ? `place ${claims.latitude.toFixed(5)}, ${claims.longitude.toFixed(5)}`
      : 'no place'
  return [
    nameLine(one),
    [plain(`Attached ${showMoment(fact.observedAt)} by ${context.personName(fact.observedBy)}`)],
    [plain(`The file claims: ${takenLine(one)}, ${claims.camera ?? 'no camera'}, ${place}`)],
    [plain(`Original ${photo.mediaType}, ${photo.widthPx} × ${photo.heightPx} px, ${photo.sizeBytes} bytes`)],
    [mono(`original ${photo.sha256}`)],
    [mono(`as printed ${photo.rendition.sha256}`, 'soft')],
    ...flagLines(one),
    ...judgedLines(one, context),
  ]
}

function takenLine({ photo }: NumberedPhoto): string {
  const taken = showClaimedTime(photo.fact.body.photo.claims)
  return taken === null ? 'no time taken' : `taken ${taken}`
}

function flagLines({ photo }: NumberedPhoto): Span[][] {
  return photo.flags.map((flag) => [strong(flagText(flag), 'in-question')])
}

function flagText(flag: PhotoFlag): string {
  const other = flag.other ? ` of one at ${streamName(flag.other.repair)}, point ${flag.other.point}` : ''
  return `Flag: ${flag.kind}${other}${flag.decision ? `; ${flag.decision.body.decision}: ${flag.decision.body.reason}` : '; not decided'}`
}

function judgedLines({ photo }: NumberedPhoto, context: DossierContext): Span[][] {
  const { judged } = photo
  return judged
    ? [
        [
          strong(judged.body.decision, judged.body.decision === 'accepted' ? 'pass' : 'fail'),
          plain(`, ${context.personName(judged.observedBy)}: ${judged.body.reason}`),
        ],
      ]
    : []
}
