import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import type { InstrumentState, Quarantine } from '@/lib/domain/fold/store-states'
import { judgeCriterion } from '@/lib/domain/judge/judge-criterion'
import type { Rule } from '@/lib/domain/specification'
import { at, contextOf, criterion, fact, type hardness, person, stream } from './judge-fixtures'

export const envelope = <
  K extends 'certificate-recorded' | 'found-wrong' | 'check-made' | 'qualification-recorded' | 'batch-recalled',
>(
  kind: K,
  no: number,
  of: string,
  when: string,
  body: FactOf<K>['body'],
) =>
  ({
    v: 1,
    id: fact(no),
    stream: stream(of),
    kind,
    observedAt: at(when),
    observedBy: person('QI'),
    enteredAt: at(when),
    enteredBy: person('QI'),
    device: { id: 'd', clockOffsetMs: null },
    body,
  }) as FactOf<K>

export const certificate = (due: string, from?: string, extra = {}) =>
  envelope('certificate-recorded', 9001, 'instrument:HD-03', '01-05 08:00', {
    certificate: 'C-3291',
    dueOn: due,
    ...(from ? { calibratedOn: from } : {}),
    ...extra,
  })

export const instrument = (changes: Partial<InstrumentState> = {}): InstrumentState => ({
  stream: stream('instrument:HD-03'),
  number: 'HD-03',
  kind: 'durometer',
  certificates: [certificate('2026-11-30', '2025-12-01')],
  checks: [],
  foundWrong: [],
  isQuarantined: false,
  quarantines: [],
  ...changes,
})

export const withInstrument = (changes: Partial<InstrumentState> = {}) => ({
  instruments: { [stream('instrument:HD-03')]: instrument(changes) },
})

export const judge = (rule: Rule, records: ReturnType<typeof hardness>[], more: Parameters<typeof contextOf>[2] = {}) =>
  judgeCriterion(criterion(rule), contextOf([criterion(rule)], records, more))

/** In quarantine from one moment to another, or yet. */
export const quarantine = (from: string, to: string | null): Quarantine => ({
  from: at(from),
  to: to && at(to),
  fact: fact(9400),
  reason: 'dropped',
})
