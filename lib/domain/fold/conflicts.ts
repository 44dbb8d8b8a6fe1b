import type { FactId } from '../facts/fact'
import type { Fact } from '../facts/fact-kinds'
import type { RecordType } from '../records/record'
import { instantOf } from '../time'
import type { EffectiveRecord } from './effective-records'
import { showRecordType } from './missing-for-release'
import { ofKind } from './order-facts'
import { personName } from './person-name'
import type { RepairGround } from './repair-ground'
import type { RepairState } from './repair-state'
import { workSpan } from './work-span'

type Conflict = RepairState['conflicts'][number]

/** Record types of which an attempt is expected to hold one: two of them by different hands at one time contradict each other. */
const ONE_EXPECTED: ReadonlySet<RecordType> = new Set([
  'defect',
  'design',
  'permit',
  'cleanliness',
  'profile',
  'pre-wrap',
  'arrest',
  'arrest-watch',
  'filler-thickness',
  'filler-cure',
  'tape-wrap',
  'cure',
  'hardness',
  'thickness',
  'visual',
  'pressure-test',
  'checklist',
  'handover',
  'removal',
])

/**
 * Records of one attempt that two devices made beside each other where one is expected, a weep seen within another's dry watch, and conflicts that
 * a sync noted. Each is resolved by a person who says which record governs, or what becomes of a decision made without a network; nothing is taken over the other before.
 */
export function conflictsOf(ground: RepairGround): Conflict[] {
  const choices = ofKind(ground.own, 'governs-chosen')
  const resolve = (facts: FactId[]) =>
    choices.findLast((one) => facts.every((id) => id === one.body.record || one.body.over.includes(id))) ?? null
  const settled = ofKind(ground.own, 'conflict-settled')
  const found: Conflict[] = []
  ground.records.forEach((a, at) => {
    for (const b of ground.records.slice(at + 1)) {
      if (a.point !== b.point || a.attempt !== b.attempt || !isByOtherHand(a, b) || !isContradiction(a, b)) continue
      const facts = [a.fact.id, b.fact.id]
      found.push({
        point: a.point,
        facts,
        text: `Two records at one time: ${showRecordType(a.record.type)} by ${personName(ground, a.fact.observedBy)} and ${showRecordType(b.record.type)} by ${personName(ground, b.fact.observedBy)}`,
        noted: null,
        decision: null,
        resolved: resolve(facts),
      })
    }
  })
  for (const noted of ofKind(ground.facts, 'conflict-noted').filter((one) => one.body.repair === ground.stream)) {
    const { decision, facts } = noted.body
    const pointOf = (fact: Fact) =>
      'point' in fact.body && fact.kind !== 'nonconformance-raised' ? fact.body.point : undefined
    const point = [
      ...ground.own.filter((fact) => fact.id === decision),
      ...ground.own.filter((fact) => facts.includes(fact.id)),
    ]
      .map(pointOf)
      .find((one) => one !== undefined)
    const isKnown = found.some((one) => facts.every((id) => one.facts.includes(id)))
    if (point !== undefined && (decision !== undefined || !isKnown))
      found.push({
        point,
        facts,
        text: noted.body.remark?.replace(/\.$/, '') ?? 'Facts that did not know of each other',
        noted: noted.id,
        decision: decision ?? null,
        // which record governs says nothing yet of a decision that did not know one of them
        resolved:
          settled.find((one) => one.body.conflict === noted.id) ?? (decision === undefined ? resolve(facts) : null),
      })
  }
  return found
}

function isByOtherHand(a: EffectiveRecord, b: EffectiveRecord): boolean {
  return a.fact.device.id !== b.fact.device.id
}

function isContradiction(a: EffectiveRecord, b: EffectiveRecord): boolean {
  if (a.record.type === b.record.type) return ONE_EXPECTED.has(a.record.type) && spansOverlap(a, b)
  const watch = a.record.type === 'arrest-watch' ? a : b.record.type === 'arrest-watch' ? b : null
  const weep = a.record.type === 'weep' ? a : b.record.type === 'weep' ? b : null
  return (
    watch !== null &&
    weep !== null &&
    watch.record.type === 'arrest-watch' &&
    watch.record.wipeDry === 'yes' &&
    spansOverlap(watch, weep)
  )
}

function spansOverlap(a: EffectiveRecord, b: EffectiveRecord): boolean {
  const one = workSpan(a.record, a.fact.observedAt)
  const other = workSpan(b.record, b.fact.observedAt)
  return instantOf(one.from) <= instantOf(other.to) && instantOf(other.from) <= instantOf(one.to)
}
