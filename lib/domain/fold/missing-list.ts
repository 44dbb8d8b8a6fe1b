import type { PlanPoint } from '../plan'
import type { RecordType } from '../records/record'
import type { Party } from '../roles'
import { showMoment } from '../time'
import type { PointSlots } from './attempt-slots'
import { designAt } from './design-in-force'
import { showRecordType } from './missing-for-release'
import { missingStatements } from './missing-statements'
import { missingWitnesses } from './missing-witnesses'
import { personName } from './person-name'
import type { RepairGround } from './repair-ground'
import type { AcceptanceState, AttemptState, PointState, RepairState, Use } from './repair-state'
import { missingCheck } from './transcription-states'

type Missing = RepairState['missing'][number]
type Parts = {
  points: readonly PointState[]
  acceptance: AcceptanceState | null
  conflicts: RepairState['conflicts']
  notices: RepairState['notices']
  queries: RepairState['queries']
  uses: readonly Use[]
  slots: readonly PointSlots[]
}

/** Points that belong to the time after acceptance: nothing is missing there before it is due. */
function isAfterAcceptance(plan: PlanPoint): boolean {
  const later: readonly RecordType[] = ['in-service', 'removal']
  return plan.records.length > 0 && plan.records.every((one) => later.includes(one.type))
}

/** Everything that the plan asks for and that is not there, each in one sentence: an index that lists only what exists looks complete when it is not. */
export function missingList(ground: RepairGround, parts: Parts): Missing[] {
  const list: Missing[] = []
  if (ground.plans.length === 0) list.push({ point: null, text: 'No plan revision is in force.' })
  if (ground.specifications.length === 0) list.push({ point: null, text: 'No specification revision is in force.' })
  for (const point of parts.points) for (const text of missingAt(point)) list.push({ point: point.no, text })
  for (const { point, text } of missingChecks(parts.points)) list.push({ point, text })
  for (const { point, text } of missingWitnesses(ground, parts.points)) list.push({ point, text })
  for (const one of parts.conflicts.filter((conflict) => conflict.resolved === null))
    list.push({
      point: one.point,
      text: `${one.text.replace(/\.$/, '')}: ${one.decision === null ? 'which governs is not decided' : 'no ruling yet'}.`,
    })
  for (const { fact, answer } of parts.notices)
    if (!answer)
      list.push({
        point: fact.body.point,
        text: `Notice to ${personName(ground, fact.body.to)} for ${showMoment(fact.body.for)}: no outcome recorded.`,
      })
  for (const { fact, answer } of parts.queries)
    if (!answer) list.push({ point: fact.body.point ?? null, text: `Query ${fact.body.number} is not answered.` })
  for (const one of ground.nonconformances.filter((ncr) => ncr.isOpen))
    list.push({ point: null, text: `${one.number} is open: ${one.state}.` })
  for (const one of ground.nonconformances)
    for (const { fact, done } of one.actions)
      if (!done)
        list.push({
          point: null,
          text: `${one.number}: corrective action of ${fact.body.owner}, due ${fact.body.dueOn}, is not done.`,
        })
  list.push(...missingCertificates(ground, parts.uses), ...missingStatements(ground, parts.slots))
  if (ground.records.length > 0 && designAt(ground, null) === null)
    list.push({ point: null, text: 'No design sheet recorded.' })
  if (!parts.acceptance) list.push({ point: null, text: 'Not accepted.' })
  else {
    if (parts.acceptance.isOverdue)
      list.push({ point: null, text: `Inspection due on ${parts.acceptance.nextInspectionOn} is not recorded.` })
    for (const one of parts.acceptance.openConditions)
      list.push({ point: null, text: `Condition of acceptance, due ${one.dueOn}, is not discharged: ${one.text}` })
  }
  return [...new Map(list.map((one) => [`${one.point} ${one.text}`, one])).values()]
}

function missingAt({ plan, current, blockedBy, awaiting }: PointState): string[] {
  if (current.state === 'not applicable') return []
  if (current.records.length === 0 && isAfterAcceptance(plan)) return []
  if (current.records.length === 0)
    return [
      `No record${current.attempt > 1 ? ` in attempt ${current.attempt}` : ''}${blockedBy.length > 0 ? `; waits for point ${blockedBy.join(', ')}` : ''}.`,
    ]
  const isReleased = current.state === 'released'
  const lacking = current.missing.filter((text) => !isReleased || !/submitted\.$/.test(text))
  const questions = current.questions
    .filter((one) => one.decision === undefined)
    .map((one) => `In question, not decided: ${one.causeKind}.`)
  const passed = current.passedWithoutRelease.map(
    (one) => `Begun at ${showMoment(one.at)} without a release of point ${one.hold} in force.`,
  )
  return [...lacking, ...questions, ...passed, ...awaiting.map((party) => unreleasedText(current, party))]
}

/** Transcriptions of earlier attempts that no second person checked; those of the present attempt are among what its release lacks. */
function missingChecks(points: readonly PointState[]): Missing[] {
  return points.flatMap(({ no, attempts, current }) =>
    attempts
      .filter((one) => one !== current)
      .flatMap(({ attempt, records }) =>
        records.flatMap(({ record, transcription }) => {
          const text = missingCheck(transcription, `Attempt ${attempt}, ${showRecordType(record.type)}`)
          return text ? [{ point: no, text }] : []
        }),
      ),
  )
}

function unreleasedText(current: AttemptState, party: Party): string {
  const last = current.releases.findLast((one) => one.fact.body.party === party)
  if (!last) return `Not released by ${party}.`
  return last.state === 'valid' || last.state === 'used'
    ? `Released by ${party} in part only.`
    : `Release by ${party} is ${last.state}.`
}

/** Instruments and batches that were used and whose certificate is not in the store. */
function missingCertificates(ground: RepairGround, uses: readonly Use[]): Missing[] {
  const texts = new Map<string, Missing>()
  for (const use of uses.filter((one) => one.role !== 'refused')) {
    const instrument = ground.instruments[use.of]
    const batch = ground.batches[use.of]
    const name = use.of.slice(use.of.indexOf(':') + 1)
    const lacks = use.of.startsWith('instrument:')
      ? !instrument || instrument.certificates.length === 0
      : use.of.startsWith('batch:')
        ? !batch || batch.received.certificate === undefined
        : false
    if (lacks && !texts.has(use.of))
      texts.set(use.of, {
        point: use.point,
        text: `Certificate of ${use.of.startsWith('batch:') ? 'batch' : 'instrument'} ${name} missing.`,
      })
  }
  return [...texts.values()]
}
