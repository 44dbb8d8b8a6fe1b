import { StreamId } from '@/lib/domain/facts/fact'
import type { Fact, FactOf } from '@/lib/domain/facts/fact-kinds'
import { foldRepair } from '@/lib/domain/fold/fold-repair'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import type { RecordOf } from '@/lib/domain/records/record'
import { DEMO_START } from '@/lib/server/demo/demo-time'
import { FACTS } from '@/test/demo/folded-demo'

type Change<T extends 'design' | 'defect'> = (record: RecordOf<T>) => RecordOf<T>

/** The fact of a repair that records its defect or its design. @throws when the demo has none */
export function assessmentFact(number: string, type: 'design' | 'defect'): FactOf<'recorded'> {
  const found = FACTS.find(
    (fact): fact is FactOf<'recorded'> =>
      fact.kind === 'recorded' && fact.stream === `repair:${number}` && fact.body.record.type === type,
  )
  if (!found) throw new Error(`no ${type} of ${number}`)
  return found
}

/** A repair of the demo whose design or defect was recorded otherwise from the start, with further facts beside the seed's. */
export function foldChanged(
  number: string,
  changes: { design?: Change<'design'>; defect?: Change<'defect'> },
  further: readonly Fact[] = [],
): RepairState {
  const facts = FACTS.map((fact): Fact => {
    if (fact.kind !== 'recorded' || fact.stream !== `repair:${number}`) return fact
    const { record } = fact.body
    if (record.type === 'design' && changes.design)
      return { ...fact, body: { ...fact.body, record: changes.design(record) } }
    if (record.type === 'defect' && changes.defect)
      return { ...fact, body: { ...fact.body, record: changes.defect(record) } }
    return fact
  })
  return foldRepair([...facts, ...further], StreamId.parse(`repair:${number}`), DEMO_START)
}

/** A repair of the demo with other values of the design equations. */
export function foldProperties(
  number: string,
  change: (properties: NonNullable<RecordOf<'design'>['properties']>) => RecordOf<'design'>['properties'],
): RepairState {
  return foldChanged(number, { design: (record) => ({ ...record, properties: change(record.properties ?? {}) }) })
}
