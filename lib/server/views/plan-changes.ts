import type { Plan, PlanPoint } from '@/lib/domain/plan'
import { PARTIES } from '@/lib/domain/roles'
import type { Change } from './specification-changes'

/** What one plan changes of another: title, points added, taken away or changed, and what events make fall. Empty when nothing does. */
export function changesOfPlan(before: Plan, after: Plan): Change[] {
  const changes: Change[] = []
  const put = (where: string, a: string | null, b: string | null) => {
    if (a !== b) changes.push({ where, before: a, after: b })
  }
  put('Title', before.title, after.title)
  const old = new Map(before.points.map((point) => [point.no, point]))
  for (const point of after.points) {
    const was = old.get(point.no)
    old.delete(point.no)
    const place = `Point ${point.no} ${point.title}`
    if (!was) {
      put(place, null, 'added')
      continue
    }
    const [a, b] = [partsOf(was), partsOf(point)]
    for (const key of Object.keys(b)) put(`${place}: ${key}`, a[key] ?? null, b[key] ?? null)
  }
  for (const gone of old.values()) put(`Point ${gone.no} ${gone.title}`, 'in the plan', null)
  const falls = (plan: Plan) =>
    Object.fromEntries(plan.invalidations.map((one) => [one.event, `${one.falls.join(', ')}: ${one.redo}`]))
  const [a, b] = [falls(before), falls(after)]
  for (const event of new Set([...Object.keys(a), ...Object.keys(b)]))
    put(`Event “${event}”`, a[event] ?? null, b[event] ?? null)
  return changes
}

function partsOf(point: PlanPoint): Record<string, string> {
  return {
    title: point.title,
    participation: PARTIES.map((party) => `${party} ${point.participation[party] ?? '·'}`).join(', '),
    records: point.records.map((one) => `${one.type} ×${one.atLeast}`).join(', '),
    signatures: point.signatures.map((one) => `${one.meaning} by ${one.role}`).join(', '),
    blocks: point.blocks.join(', '),
    photos: point.photos.map((one) => `${one.show} ×${one.atLeast}`).join('; '),
    'own work may be released': point.selfRelease ? 'yes' : 'no',
    hazards: point.hazards.join(' '),
  }
}
