import { measured } from '@/lib/domain/reading'
import { COMPLETIONS } from './completions'
import { L1, QI, T1 } from './demo-people'
import { instrumentRow } from './demo-store-tables'
import { at, secondsAfter } from './demo-time'
import type { BodyInput } from './fact-script'
import type { OnRepair } from './steps-before'

type InstrumentLine = Extract<BodyInput<'recorded'>['record'], { type: 'instruments' }>['instruments'][number]

/** A person on the job with the qualification shown for the task. */
export type JobPerson = { person: string; qualification: string; task: 'applicator' | 'supervisor' | 'inspector' }

/** Who is on most jobs of the demonstration. */
export const USUAL_PERSONS: JobPerson[] = [
  { person: T1, qualification: 'Q-118', task: 'applicator' },
  { person: L1, qualification: 'Q-064', task: 'supervisor' },
  { person: QI, qualification: 'I-022', task: 'inspector' },
]

/** Point 04: instruments with their check, and the persons on the job. The durometer's daily check is on a mid-scale block only. */
export function stepInstruments(
  { hand, figures, number }: OnRepair,
  taken: string[],
  { refused = [], persons = USUAL_PERSONS }: { refused?: { id: string; reason: string }[]; persons?: JobPerson[] } = {},
): void {
  const { instruments } = COMPLETIONS[number]
  const seen = at(figures.day, instruments.at)
  const line = (id: string): Omit<InstrumentLine, 'decision'> => {
    const { certificate, unit, reference, kind } = instrumentRow(id)
    return {
      instrument: `instrument:${id}`,
      certificate,
      reference: measured(reference[0], unit),
      read: measured(reference[1], unit),
      tolerance: measured(reference[2], unit),
      coverage: kind === 'durometer' ? 'mid scale' : 'full scale',
      when: 'before',
    }
  }
  hand.record('04', seen, QI, {
    type: 'instruments',
    persons,
    instruments: [
      ...taken.map((id): InstrumentLine => ({ ...line(id), decision: 'taken' })),
      ...refused.map(
        ({ id, reason }): InstrumentLine => ({
          instrument: `instrument:${id}`,
          certificate: instrumentRow(id).certificate,
          coverage: 'none',
          when: 'before',
          decision: 'refused',
          reason,
        }),
      ),
    ],
  })
  const shown = instrumentRow(taken[0] ?? '')
  hand.photo('04', secondsAfter(seen, 120), QI, 'id-plate', `${shown.id} on its reference piece`, {
    kind: 'digital',
    title: shown.id,
    lines: [shown.reference[1], shown.unit],
    note: `reference ${shown.reference[0]}`,
  })
  hand.close('04', at(figures.day, instruments.closedAt), {
    signs: [[QI, 'checked']],
    submittedBy: QI,
    releases: [
      ['crew', L1],
      ['inspector', QI],
    ],
  })
}
