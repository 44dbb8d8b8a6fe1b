import { Glyph } from '@/app/_ui/glyph'
import type { PersonId } from '@/lib/domain/facts/fact'
import type { RecordState } from '@/lib/domain/fold/repair-state'
import { showMoment } from '@/lib/domain/time'

/** Marks a record copied from paper: observed by and at, entered by and at, sheet, keeper, place, scan, and who checked it. */
export function PaperNote({
  copy: { fact, transcription },
  names,
}: {
  copy: Pick<RecordState, 'fact' | 'transcription'>
  names: Record<PersonId, string>
}) {
  if (!transcription) return null
  const { paper, state, check, voided } = transcription
  const nameOf = (person: PersonId) => names[person] ?? person
  return (
    <div className={`note ${state === 'agrees' ? 'good' : 'warn'}`}>
      <strong>From paper{paper.sheet ? `, sheet ${paper.sheet}` : ''}</strong>
      <span>
        Observed {showMoment(fact.observedAt)} by {nameOf(fact.observedBy)}; entered {showMoment(fact.enteredAt)} by{' '}
        {nameOf(fact.enteredBy)}.
      </span>
      <span>
        The paper is kept by {paper.keeper}, {paper.place}.{' '}
        {paper.tally ? `Scan SHA-256 ${paper.tally.slice(0, 16)}…` : 'No scan.'}
      </span>
      <span className={`mark ${state === 'agrees' ? 'pass' : state === 'differs' ? 'fail' : 'plain-state'}`}>
        <Glyph name={state === 'agrees' ? 'pass' : state === 'differs' ? 'fail' : 'open'} />
        {check
          ? `Checked against the paper by ${nameOf(check.observedBy)}, ${showMoment(check.observedAt)}: ${check.body.result}${check.body.remark ? `, ${check.body.remark}` : ''}`
          : voided
            ? `Corrected since ${nameOf(voided.observedBy)} checked it: to be checked anew by a second person`
            : 'Not yet checked by a second person'}
      </span>
    </div>
  )
}
