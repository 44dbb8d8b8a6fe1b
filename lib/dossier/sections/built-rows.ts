import type { AttemptState } from '@/lib/domain/fold/repair-state'
import type { CriterionResult } from '@/lib/domain/judge/verdict'
import { latestRecord } from '@/lib/domain/pictures/latest-record'
import { type Measured, showReadingUnit } from '@/lib/domain/reading'
import type { Rule } from '@/lib/domain/specification'
import { type Cell, type Column, cell } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { criterionCell } from './signs'

export const BUILT_COLUMNS: readonly Column[] = [
  { title: 'What' },
  { title: 'Design or limit' },
  { title: 'As built' },
  { title: 'Verdict' },
]

const KEY_QUANTITIES: ReadonlySet<string> = new Set([
  'filler-over-hole',
  'filler-on-ring',
  'hardness',
  'laminate-thickness',
  'total-length',
  'taper',
  'tape-start-length',
])
const KEY_KINDS: ReadonlySet<Rule['kind']> = new Set(['plies', 'cure-hold', 'cure-equivalent', 'pressure-drop'])

/** What was built against what was designed or specified, one row for each criterion that the finished repair stands on; latest attempts only. */
export function builtRows({ state }: DossierContext): Cell[][] {
  const rows = state.points.flatMap((point) => {
    const attempt = lastRecorded(point.attempts)
    return attempt ? attempt.criteria.filter(isKey).map((result) => criterionRow(result, attempt)) : []
  })
  const doubted = state.points.flatMap((point) => {
    const attempt = lastRecorded(point.attempts)
    return attempt
      ? attempt.criteria
          .filter((result) => !isKey(result) && (result.verdict !== 'pass' || result.questions.length > 0))
          .map((result) => criterionRow(result, attempt))
      : []
  })
  return [...rows, ...doubted]
}

function isKey({ criterion: { rule } }: CriterionResult): boolean {
  if (KEY_KINDS.has(rule.kind)) return true
  return (rule.kind === 'each' || rule.kind === 'mean') && KEY_QUANTITIES.has(rule.quantity)
}

function lastRecorded(attempts: readonly AttemptState[]): AttemptState | undefined {
  return attempts.findLast((one) => one.records.length > 0)
}

function criterionRow(result: CriterionResult, attempt: AttemptState): Cell[] {
  return [
    cell(`${result.criterion.title}, point ${attempt.point}${attempt.attempt > 1 ? `/${attempt.attempt}` : ''}`),
    cell(result.limit),
    cell(result.found),
    criterionCell(result),
  ]
}

/** Values of the design sheet beside the same values as built. Nothing stands where nothing is recorded. */
export function designRows({ state }: DossierContext): Cell[][] {
  const { design } = state
  if (!design) return []
  const visual = latestRecord(state, 'visual')?.record
  const count = latestRecord(state, 'ply-count')?.record
  const shown = (value: Measured | undefined): Cell =>
    cell(value ? showReadingUnit(value) : 'not recorded', value ? 'ink' : 'not-proven')
  return [
    [cell('Plies'), shown(design.plies), shown(count?.plies)],
    [cell('Total length'), shown(design.totalLength), shown(visual?.totalLength)],
    [
      cell('Taper, left and right'),
      shown(design.taper),
      visual ? cell(`${showReadingUnit(visual.taperLeft)}, ${showReadingUnit(visual.taperRight)}`) : shown(undefined),
    ],
    [
      cell('Life'),
      shown(design.lifeYears),
      cell(state.acceptance ? `${state.acceptance.lifeYears} yr, from acceptance decision` : 'not accepted'),
    ],
  ]
}
