import { PersonId, Sha256 } from '../facts/fact'
import { SheetNo, type Transcribed } from '../facts/transcription-bodies'
import { Moment } from '../time'

/** What is keyed beside a record when it is copied from paper; empty until keyed, never filled in beforehand. */
export type PaperCopy = {
  observer: string
  sheet: string
  keeper: string
  place: string
  scan: { sha256: string; name: string } | null
  /** Day and clock time on the paper, for a record that has no time of its own. */
  day: string
  clock: string
}

export const EMPTY_COPY: PaperCopy = { observer: '', sheet: '', keeper: '', place: '', scan: null, day: '', clock: '' }

/** What a copy from paper states beside its record, once nothing is missing. */
export type PaperStatement = { transcribed: Transcribed; observedBy: PersonId; observedAt: Moment }

/** Why a copy from paper is entered late: it stood on paper first. */
export function lateFromPaper({ sheet }: Pick<Transcribed, 'sheet'>): { reason: string; source: 'paper tally' } {
  return { reason: sheet ? `Kept on tally sheet ${sheet}` : 'Kept on a paper tally', source: 'paper tally' }
}

/** The time on the paper as keyed; null while it is not whole. */
export function paperMoment({ day, clock }: Pick<PaperCopy, 'day' | 'clock'>, utcOffset: string): Moment | null {
  const moment = Moment.safeParse(`${day}T${clock.length === 5 ? `${clock}:00` : clock}${utcOffset}`)
  return moment.success ? moment.data : null
}

/**
 * The statement of a copy, or what it still lacks, each in one sentence.
 * @param own the record's own time, null when it has none
 */
export function statePaper(
  copy: PaperCopy,
  own: Moment | null,
  utcOffset: string,
): { ok: true; value: PaperStatement } | { ok: false; lacks: string[] } {
  const observer = PersonId.safeParse(copy.observer)
  const scan = Sha256.safeParse(copy.scan?.sha256)
  const sheet = copy.sheet.trim() === '' ? undefined : SheetNo.safeParse(copy.sheet.trim())
  const observedAt = own ?? paperMoment(copy, utcOffset)
  const [keeper, place] = [copy.keeper.trim(), copy.place.trim()]
  const lacks = [
    ...(observer.success ? [] : ['Choose who observed it: the name on the paper.']),
    ...(observedAt ? [] : ['Key the day and time on the paper.']),
    ...(keeper === '' ? ['Say who keeps the paper.'] : []),
    ...(place === '' ? ['Say where the paper is kept.'] : []),
    ...(sheet === undefined || sheet.success ? [] : ['The number of the sheet cannot be read: key it as printed.']),
    ...(scan.success ? [] : ['Attach the scan of the paper.']),
  ]
  if (!observer.success || !observedAt || !scan.success || lacks.length > 0) return { ok: false, lacks }
  const transcribed = { tally: scan.data, ...(sheet?.success ? { sheet: sheet.data } : {}), keeper, place }
  return { ok: true, value: { transcribed, observedBy: observer.data, observedAt } }
}
