import type { RecordState } from '@/lib/domain/fold/repair-state'
import { transcriptionWords } from '@/lib/domain/fold/transcription-states'
import { plain, type Span, strong } from '../blocks'
import type { DossierContext } from '../dossier-context'

/** That a record was copied from paper: sheet, keeper, place, scan with its number among the pictures, and who checked it; nothing for any other record. */
export function paperSpans({ transcription }: RecordState, context: DossierContext): Span[] {
  if (!transcription) return []
  const { scan, state } = transcription
  const printed = scan && context.photos.find((one) => one.photo.fact.id === scan.id)
  const words = ` T${transcriptionWords(transcription, context.personName).slice(1)}${printed ? `; the scan is ${printed.no} in section 19` : ''}.`
  return [state === 'agrees' ? plain(words) : strong(words, 'in-question')]
}
