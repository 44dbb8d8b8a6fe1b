import type { AttemptState } from '@/lib/domain/fold/repair-state'
import type { PlanPoint } from '@/lib/domain/plan'

/** What the plan asks for before an attempt can be submitted and is not there: records by type and photos by demand, each in one sentence. */
export function submissionLacks(current: AttemptState, plan: PlanPoint): string[] {
  const records = plan.records.flatMap(({ type, atLeast }) => {
    const there = current.records.filter((one) => one.record.type === type && one.overruledBy === null).length
    return there < atLeast ? [`Record of ${type.replaceAll('-', ' ')} missing: ${there} of ${atLeast}.`] : []
  })
  const photos = plan.photos.flatMap(({ id, show, atLeast }) => {
    const there = current.photos.filter((one) => one.fact.body.demand === id && one.judged?.body.decision !== 'not accepted').length
    return there < atLeast ? [`Photo missing: ${show} (${there} of ${atLeast}).`] : []
  })
  return [...records, ...photos]
}
