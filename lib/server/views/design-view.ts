import { designAsks } from '@/lib/domain/design/design-asks'
import { type DesignSheet, designSheet } from '@/lib/domain/design/design-sheet'
import { type Neighbour, sameStretch } from '@/lib/domain/design/same-stretch'
import { foldProject } from '@/lib/domain/fold/fold-project'
import type { PhotoState } from '@/lib/domain/fold/repair-state'
import { loadPersonChoices, type PersonChoice } from './person-choices'
import type { ReadingDesk } from './reading-desk'
import { loadRepairStates } from './repair-list-view'
import { loadRepairView, type RepairView } from './repair-view'

export type DesignView = RepairView & {
  sheet: DesignSheet
  asks: string[]
  neighbours: Neighbour[]
  /** Photos of the point at which the design is recorded, those not accepted left out. */
  photos: PhotoState[]
  /** Where the design is recorded: its point and latest attempt; null when the plan has no such point. */
  at: { point: string; attempt: number } | null
  signers: PersonChoice[]
  isEngineer: boolean
}

/** The design sheet of a repair for who is asking; null when the repair is not in their record or not theirs to read. */
export async function loadDesignView(reading: ReadingDesk, number: string): Promise<DesignView | null> {
  const view = await loadRepairView(reading, number)
  if (!view) return null
  const { desk } = reading
  const { state } = view
  const { project } = state.opened.body
  const folded = foldProject((await desk.factsOf(project)) ?? [], project, desk.now(null))
  const point = state.points.find((one) => one.plan.records.some((record) => record.type === 'design'))
  const sheet = designSheet(state)
  return {
    ...view,
    sheet,
    asks: designAsks(state, sheet),
    neighbours: sameStretch(state, await loadRepairStates(reading)),
    photos: (point?.attempts ?? []).flatMap((attempt) =>
      attempt.photos.filter((one) => one.judged?.body.decision !== 'not accepted'),
    ),
    at: point ? { point: point.no, attempt: point.current.attempt } : null,
    signers: await loadPersonChoices(reading, folded),
    isEngineer: view.roles.includes('engineer'),
  }
}
