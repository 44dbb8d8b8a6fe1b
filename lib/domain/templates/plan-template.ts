import { Plan } from '../plan'
import type { Participation } from '../roles'
import { PLAN_INVALIDATIONS } from './plan-invalidations'
import { COMMON_POINTS, type PlanRow, WRAP_POINTS } from './plan-points'

const CODES: Record<string, Participation | null> = { H: 'H', W: 'W', R: 'R', M: 'M', '-': null }
const TITLES = {
  'wet lay-up': 'Leak repair by wet lay-up',
  'water-activated tape': 'Leak repair by water-activated tape',
} as const

/**
 * The inspection and test plan of a leak repair, 22 points, by kind of wrap: a draft to issue as it is or to change first.
 * It holds no limit; limits are the specification's.
 */
export function planTemplate(wrap: 'wet lay-up' | 'water-activated tape'): Plan {
  const rows = Object.entries({ ...COMMON_POINTS, '14': WRAP_POINTS[wrap] }).sort(([a], [b]) => a.localeCompare(b))
  return Plan.parse({
    number: wrap === 'wet lay-up' ? 'ITP-WET' : 'ITP-TAPE',
    title: TITLES[wrap],
    points: rows.map(([no, { codes, ...row }]): PlanRow => ({ no, ...row, participation: participationOf(codes) })),
    invalidations: PLAN_INVALIDATIONS,
  })
}

function participationOf(codes: string): PlanRow['participation'] {
  const [crew = null, inspector = null, client = null, engineer = null] = [...codes].map((code) => CODES[code] ?? null)
  return { crew, inspector, client, engineer }
}
