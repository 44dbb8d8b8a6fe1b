import type { ConflictView } from '@/lib/domain/fold/conflict-view'
import { foldProject } from '@/lib/domain/fold/fold-project'
import type { AttemptState, PointState } from '@/lib/domain/fold/repair-state'
import { mayAct } from '@/lib/domain/permissions'
import type { Role } from '@/lib/domain/roles'
import { clockKindOf } from './clock-kind'
import { loadConflictViews } from './conflict-view'
import { loadPersonChoices } from './person-choices'
import type { ReadingDesk } from './reading-desk'
import { loadRepairView, type RepairView } from './repair-view'

export type PointView = RepairView & {
  point: PointState
  attempt: AttemptState
  mayRecord: boolean
  mayAttach: boolean
  isSparkRestricted: boolean
  /** Persons who may sign here, with the roles that they hold today; `hasAccount` false: they sign in person on this tablet. */
  signers: { person: string; name: string; roles: Role[]; hasAccount: boolean }[]
  utcOffset: string
  clockKind: 'real' | 'demo' | 'test'
  heads: { stream: string; length: number }[]
  conflicts: ConflictView[]
}

/** One point of a repair and one attempt at it (the latest when none is asked); null when it is not there to read. */
export async function loadPointView(
  reading: ReadingDesk,
  number: string,
  no: string,
  asked: number | null,
): Promise<PointView | null> {
  const view = await loadRepairView(reading, number)
  const point = view?.state.points.find((one) => one.no === no)
  const attempt = point && (asked === null ? point.current : point.attempts.find((one) => one.attempt === asked))
  if (!view || !point || !attempt) return null
  const { desk } = reading
  const { project } = view.state.opened.body
  const folded = foldProject((await desk.factsOf(project)) ?? [], project, desk.now(null))
  const permit = view.state.points.flatMap((one) =>
    one.attempts.flatMap((each) =>
      each.records.flatMap(({ record }) => (record.type === 'permit' ? [record.sparkRestricted] : [])),
    ),
  )
  return {
    ...view,
    point,
    attempt,
    signers: await loadPersonChoices(reading, folded),
    utcOffset: folded?.opened.body.utcOffset ?? '+00:00',
    clockKind: await clockKindOf(desk.store, reading.actor.tenant),
    mayRecord: mayAct('enter-record', view.roles) === 'may',
    mayAttach: mayAct('attach-photo', view.roles) === 'may',
    isSparkRestricted: permit.at(-1) === 'yes',
    heads: await desk.headsOf([view.state.stream]),
    conflicts: await loadConflictViews(reading, view.state, no),
  }
}
