import type { FactId, PersonId } from '../facts/fact'
import type { Fact, FactOf } from '../facts/fact-kinds'
import type { Transcribed } from '../facts/transcription-bodies'
import { done, type Result, refused } from '../result'
import { showMoment } from '../time'
import type { EffectiveRecord } from './effective-records'
import { ofKind } from './order-facts'

/** A record copied from paper: its scan, and what a second person found who compared the two. */
export type TranscriptionState = {
  paper: Transcribed
  scan: FactOf<'photo-attached'> | null
  state: 'to check' | 'agrees' | 'differs'
  /** The check in force: it saw the record with all its corrections. */
  check: FactOf<'transcription-checked'> | null
  /** A check that a later correction made void, when none is in force. */
  voided: FactOf<'transcription-checked'> | null
  /** Who entered or corrected the copy: their own check is none. */
  copiedBy: PersonId[]
}

type Copied = Pick<EffectiveRecord, 'fact' | 'corrections'>

/**
 * How a transcribed record stands against its paper; null when it was not first on paper. A check counts when another person made it than those who entered and corrected the copy, and while it
 * names every correction there is: a later correction makes it void. `checkedBy` at entry is no check.
 * @param own the repair's own facts in fold order
 */
export function transcriptionState(copy: Copied, own: readonly Fact[]): TranscriptionState | null {
  const { fact, corrections } = copy
  const paper = fact.body.transcribed
  if (!paper) return null
  const copiedBy = [...new Set([fact.enteredBy, ...corrections.map((one) => one.enteredBy)])]
  const checks = ofKind(own, 'transcription-checked').filter(
    (one) => one.body.record === fact.id && !copiedBy.includes(one.observedBy),
  )
  const check = checks.findLast((one) => isSameSet(one.body.corrections, corrections)) ?? null
  return {
    paper,
    scan: ofKind(own, 'photo-attached').find((one) => one.body.scan && one.body.photo.sha256 === paper.tally) ?? null,
    state: check?.body.result ?? 'to check',
    check,
    voided: check ? null : (checks.at(-1) ?? null),
    copiedBy,
  }
}

function isSameSet(named: readonly FactId[], corrections: readonly { id: FactId }[]): boolean {
  const seen = new Set(named)
  return seen.size === corrections.length && corrections.every((one) => seen.has(one.id))
}

/** What a transcription lacks until a second person found that it agrees with its paper, in one sentence; null when nothing. */
export function missingCheck(state: TranscriptionState | null, title: string): string | null {
  if (!state || state.state === 'agrees') return null
  if (state.state === 'differs')
    return `${title}: the transcription differs from the paper, to be corrected: ${(state.check?.body.remark ?? '').replace(/[.\s]+$/, '')}.`
  return state.voided
    ? `${title}: transcribed, corrected after its check, to be checked anew by a second person.`
    : `${title}: transcribed, not yet checked by a second person.`
}

/** What the transcriptions among records lack, each in one sentence. */
export function uncheckedTranscriptions(
  records: readonly (Copied & Pick<EffectiveRecord, 'record'>)[],
  own: readonly Fact[],
): string[] {
  return records.flatMap((one) => {
    const name = one.record.type.replaceAll('-', ' ')
    return missingCheck(transcriptionState(one, own), `${name.charAt(0).toUpperCase()}${name.slice(1)}`) ?? []
  })
}

/** Where a transcribed record comes from and who checked it, in one sentence part: paper, keeper, place, sheet, scan, check. */
export function transcriptionWords(
  { paper, state, check, voided }: Omit<TranscriptionState, 'scan' | 'copiedBy'>,
  nameOf: (person: PersonId) => string,
): string {
  const from = `transcribed from paper${paper.sheet ? `, sheet ${paper.sheet}` : ''}, kept by ${paper.keeper}, ${paper.place}`
  const scan = paper.tally ? `scan SHA-256 ${paper.tally.slice(0, 16)}…` : 'no scan'
  const by = check && `${nameOf(check.observedBy)}, ${showMoment(check.observedAt)}`
  const checked =
    state === 'agrees'
      ? `checked against the paper by ${by}: agrees`
      : state === 'differs'
        ? `checked against the paper by ${by}: differs, ${check?.body.remark ?? ''}`
        : voided
          ? `check by ${nameOf(voided.observedBy)} void since a correction, not checked anew`
          : 'not checked by a second person'
  return `${from}; ${scan}; ${checked}`
}

export type CheckRefusal =
  | { code: 'not-transcribed' }
  | { code: 'own-transcription'; copiedBy: PersonId[] }
  | { code: 'corrections-moved' }

/** Whether a person may say that a transcription agrees with its paper or differs: anyone but who entered or corrected it, having seen it as it stands. */
export function mayCheckTranscription(
  copy: Copied & { transcription: TranscriptionState | null },
  seen: readonly FactId[],
  person: PersonId,
): Result<true, CheckRefusal> {
  const { transcription } = copy
  if (!transcription) return refused({ code: 'not-transcribed' })
  if (transcription.copiedBy.includes(person))
    return refused({ code: 'own-transcription', copiedBy: transcription.copiedBy })
  return isSameSet(seen, copy.corrections) ? done(true) : refused({ code: 'corrections-moved' })
}
