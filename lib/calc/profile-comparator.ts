import { oneOf, positive } from '@/lib/calc/argument'
import { isBelow } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'

type Segment = readonly [nominalUm: number, toleranceUm: number]
type FourSegments = readonly [Segment, Segment, Segment, Segment]

/** ISO 8503-1 comparator segments 1 to 4: nominal height and tolerance, um. */
const SEGMENTS: Readonly<Record<'grit' | 'shot', FourSegments>> = {
  grit: [
    [25, 3],
    [60, 10],
    [100, 15],
    [150, 20],
  ],
  shot: [
    [25, 3],
    [40, 5],
    [70, 10],
    [100, 15],
  ],
}
const GRADES = ['fine', 'medium', 'coarse'] as const

export type ProfileGrade = 'finer_than_fine' | (typeof GRADES)[number] | 'coarser_than_coarse'

/**
 * Comparator grade of a profile height in um: fine [segment 1, 2), medium [2, 3), coarse [3, 4), else finer or coarser; exactly
 * on segment 4 is coarser (medium). The kind of abrasive must be known: 58 um is fine on grit, medium on shot.
 * Refuses `not_positive_profile_um`, `unknown_kind`. Grading a tape number this way mixes two methods: say so (medium).
 * @source ISO 8503-1, ISO 8503-2. Confidence high.
 */
export const comparatorGrade = formula(
  { profileUm: positive('profile_um'), kind: oneOf('kind', ['grit', 'shot']) },
  ({ profileUm, kind }): { grade: ProfileGrade } => {
    const [first, ...ends] = SEGMENTS[kind]
    if (isBelow(profileUm, first[0])) return { grade: 'finer_than_fine' }
    const reached = ends.findIndex(([nominalUm]) => isBelow(profileUm, nominalUm))
    return { grade: GRADES[reached] ?? 'coarser_than_coarse' }
  },
)

/**
 * Heights and tolerances in um between which a grade lies. Refuses `unknown_grade`, `unknown_kind`.
 * @source ISO 8503-1. Confidence high.
 */
export const comparatorBand = formula(
  { grade: oneOf('grade', GRADES), kind: oneOf('kind', ['grit', 'shot']) },
  ({ grade, kind }) => {
    const [s1, s2, s3, s4] = SEGMENTS[kind]
    const bands = { fine: [s1, s2], medium: [s2, s3], coarse: [s3, s4] } as const
    const [from, below] = bands[grade]
    return { fromUm: from[0], belowUm: below[0], fromToleranceUm: from[1], belowToleranceUm: below[1] }
  },
)
