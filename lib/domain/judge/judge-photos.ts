import type { PhotoState } from '../fold/repair-state'
import type { Rule } from '../specification'
import type { JudgeFrame } from './frame'
import { type Check, findingOf, outcomeOf, type RuleOutcome } from './outcome'

/** Every photo that the plan demands is there, as often as demanded. One not accepted, or judged the same picture wrongly used, does not count; one that is on the device and not in the record yet does. */
export function judgePhotos(_rule: Extract<Rule, { kind: 'photos' }>, frame: JudgeFrame): RuleOutcome {
  const demands = frame.context.point.photos
  if (demands.length === 0) return outcomeOf([{ verdict: 'pass' }], 'none demanded')
  const counts = demands.map((demand) => ({
    demand,
    photos: frame.context.photos.filter((photo) => photo.fact.body.demand === demand.id && counted(photo)),
    toCome: (frame.context.photosToCome ?? []).filter((one) => one === demand.id).length,
  }))
  const checks = counts.map(
    ({ demand, photos, toCome }): Check =>
      photos.length + toCome >= demand.atLeast
        ? { verdict: 'pass' }
        : {
            verdict: 'not proven',
            finding: findingOf(frame, 'photo-missing', {
              found: `${photos.length + toCome}`,
              limit: `${demand.atLeast}`,
              detail: demand.show,
              facts: photos.map((photo) => photo.fact.id),
            }),
          },
  )
  const met = checks.filter((check) => check.verdict === 'pass').length
  return outcomeOf(checks, `${met} of ${demands.length} demanded`, { figures: { count: met, planned: demands.length } })
}

/** Of two equal photos only the later use is in doubt; undecided it counts. */
function counted({ fact, judged, flags }: PhotoState): boolean {
  return (
    judged?.body.decision !== 'not accepted' &&
    !flags.some(
      ({ other, decision }) =>
        decision?.body.decision === 'same picture, wrongly used' && !(other && fact.id < other.fact),
    )
  )
}
