import type { PersonId } from '../facts/fact'
import type { PointState } from '../fold/repair-state'
import { mayAct } from '../permissions'
import { RECORD_TITLES } from '../records/record-titles'
import type { Role } from '../roles'
import type { WaitingLine } from './waiting-line'

/** Transcriptions at a point that wait for a person: to check against the paper for a second one, to correct what differs for who entered it. */
export function transcriptionLines(
  point: PointState,
  at: Pick<WaitingLine, 'repair' | 'point' | 'href'>,
  roles: readonly Role[],
  me: PersonId,
): WaitingLine[] {
  const mayCheck = mayAct('check-transcription', roles) === 'may'
  return point.attempts.flatMap(({ attempt, records }) =>
    records.flatMap(({ fact, record, overruledBy, transcription }): WaitingLine[] => {
      if (!transcription || overruledBy !== null) return []
      const title = `${RECORD_TITLES[record.type] ?? record.type}, point ${point.no} attempt ${attempt}`
      const isMine = transcription.copiedBy.includes(me)
      if (transcription.state === 'to check' && mayCheck && !isMine)
        return [
          {
            ...at,
            href: `${at.href}/check/${fact.id}`,
            kind: 'check',
            title: `To check against the paper: ${title}`,
            detail: transcription.voided ? 'corrected since it was checked' : 'transcribed, not yet checked',
          },
        ]
      return transcription.state === 'differs' && isMine
        ? [
            {
              ...at,
              href: `${at.href}/correct/${fact.id}`,
              kind: 'check',
              title: `Differs from the paper: ${title}`,
              detail: transcription.check?.body.remark ?? 'correct it',
            },
          ]
        : []
    }),
  )
}
