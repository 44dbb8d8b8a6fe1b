import type { CriterionResult, VerdictKind } from '../judge/verdict'
import type { PlanPoint } from '../plan'
import type { RecordType } from '../records/record'
import type { Meaning, Role } from '../roles'
import { instantOf } from '../time'
import type { AttemptSlot } from './attempt-slots'
import type { PhotoState, RepairState, SignatureState } from './repair-state'
import { signaturesOver } from './signature-states'
import { EVENT_RECORDS } from './work-span'

export type ReleaseNeeds = {
  slot: AttemptSlot
  criteria: readonly CriterionResult[]
  verdict: VerdictKind
  photos: readonly PhotoState[]
  photosToCome: readonly string[]
  signatures: readonly SignatureState[]
  /** What transcriptions lack, each in one sentence. */
  unchecked: readonly string[]
  isConceded: boolean
  hasSpecification: boolean
  conflicts: RepairState['conflicts']
}

/** A record type in words. */
export function showRecordType(type: RecordType): string {
  return type.replaceAll('-', ' ')
}

/** Records and photos that the plan requires of an attempt and that are not there, each in one sentence. */
export function missingRecords(
  plan: PlanPoint,
  governing: readonly { record: { type: RecordType } }[],
  photos: readonly PhotoState[],
  photosToCome: readonly string[] = [],
): string[] {
  const lacking: string[] = []
  for (const need of plan.records) {
    const there = governing.filter((one) => one.record.type === need.type).length
    if (there < need.atLeast)
      lacking.push(`Record of ${showRecordType(need.type)} missing: ${there} of ${need.atLeast}.`)
  }
  for (const demand of plan.photos) {
    const there =
      photosToCome.filter((id) => id === demand.id).length +
      photos.filter((one) => one.fact.body.demand === demand.id && one.judged?.body.decision !== 'not accepted').length
    if (there < demand.atLeast) lacking.push(`Photo missing: ${demand.show} (${there} of ${demand.atLeast}).`)
  }
  return lacking
}

/** Signatures that the plan demands over the governing records and that do not stand over all of them. */
export function missingSignatures({ slot, signatures }: Pick<ReleaseNeeds, 'slot' | 'signatures'>): string[] {
  const records = slot.governing.filter((one) => !EVENT_RECORDS.has(one.record.type))
  return slot.plan.signatures.flatMap(({ meaning, role }) => {
    const such = signatures.filter((one) => isSignature(one, meaning, role))
    if (such.length === 0) return [`Signature "${meaning}" by ${role} missing.`]
    const uncovered = records.filter((one) => signaturesOver(one, such).length === 0).length
    return uncovered === 0
      ? []
      : [`Signature "${meaning}" by ${role} does not stand over ${uncovered} of ${records.length} records.`]
  })
}

function isSignature(one: SignatureState, meaning: Meaning, role: Role): boolean {
  return one.fact.body.meaning === meaning && one.fact.body.role === role
}

/** What a release of an attempt still lacks, each in one sentence. Points without a criterion are recorded, not judged. */
export function missingForRelease(needs: ReleaseNeeds): string[] {
  const { slot, criteria, verdict, photos, photosToCome, isConceded, hasSpecification, conflicts } = needs
  const lacking = hasSpecification ? [] : ['No specification revision was in force for this work.']
  lacking.push(...missingRecords(slot.plan, slot.governing, photos, photosToCome), ...missingSignatures(needs))
  lacking.push(...needs.unchecked)
  if (!isSubmitted(slot))
    lacking.push(
      slot.facts.some((fact) => fact.kind === 'submitted') ? 'Changed since it was submitted.' : 'Not submitted.',
    )
  if (criteria.length > 0 && verdict !== 'pass' && !isConceded) {
    for (const one of criteria.filter((result) => result.verdict !== 'pass'))
      lacking.push(`${one.criterion.title}: ${one.verdict}${one.found ? `, found ${one.found}` : ''}.`)
  }
  for (const one of conflicts.filter(
    (conflict) =>
      conflict.resolved === null &&
      (slot.records.some((record) => conflict.facts.includes(record.fact.id)) ||
        slot.facts.some((fact) => fact.id === conflict.decision)),
  ))
    lacking.push(
      `${one.text.replace(/\.$/, '')}: ${one.decision === null ? 'which governs is not decided' : 'no ruling yet'}.`,
    )
  return lacking
}

/** Whether the attempt was submitted and no record or correction of it came after. */
export function isSubmitted(slot: AttemptSlot): boolean {
  const submitted = slot.facts.findLast((fact) => fact.kind === 'submitted')
  if (!submitted) return false
  const until = instantOf(submitted.observedAt)
  return slot.governing.every((one) =>
    [one.fact, ...one.corrections].every((fact) => instantOf(fact.observedAt) <= until),
  )
}
