import { type Argument, list, optional, pair } from '@/lib/calc/argument'
import { formula } from '@/lib/calc/formula'
import { type Refusal, refuse } from '@/lib/calc/refusal'

/** Preparation families: St hand and power tool, Sa blast (ISO 8501-1), Wa water jet (ISO 8501-4). */
export type CleanlinessFamily = 'St' | 'Sa' | 'Wa'
export type CleanlinessLevel = '1' | '2' | '2.5' | '3'

/** One grade. Inside a family grades are ordered; between families they are not comparable. */
export interface CleanlinessGrade {
  readonly family: CleanlinessFamily
  readonly level: CleanlinessLevel
  readonly text: string
}

const LEVELS: Readonly<Record<CleanlinessFamily, readonly CleanlinessLevel[]>> = {
  St: ['2', '3'],
  Sa: ['1', '2', '2.5', '3'],
  Wa: ['1', '2', '2.5'],
}
const FAMILIES: Readonly<Record<string, CleanlinessFamily>> = { st: 'St', sa: 'Sa', wa: 'Wa' }
const HALF = /^2(?:[.,]5| ?½|[ -]1\/2)$/u

/** The grade a text means, or `unknown_grade`. "Sa 2 1/2", "sa2.5", "Sa 2,5" and "Sa 2½" are one grade. */
function readGrade(written: string): CleanlinessGrade | Refusal {
  const parts = /^(st|sa|wa) ?(.+)$/.exec(written.trim().replaceAll(/\s+/gu, ' ').toLowerCase())
  const family = FAMILIES[parts?.[1] ?? '']
  const levelText = parts?.[2]
  if (family === undefined || levelText === undefined) return refuse('unknown_grade')
  const plain = HALF.test(levelText) ? '2.5' : levelText
  const level = LEVELS[family].find((known) => known === plain)
  return level === undefined ? refuse('unknown_grade') : { family, level, text: `${family} ${level}` }
}

/** A grade as an argument. Refuses `missing_grade` when absent or blank, `unknown_grade` when no such grade exists. */
export function cleanlinessGrade(code: string): Argument<string | null | undefined, CleanlinessGrade> {
  return {
    code,
    read: (value) => {
      if (value === null || value === undefined) return refuse('missing_grade')
      if (typeof value !== 'string') return refuse('unknown_grade')
      return value.trim() === '' ? refuse('missing_grade') : readGrade(value)
    },
  }
}

/**
 * Parse a cleanliness grade. Refuses `missing_grade` and `unknown_grade` (Wa 3 and St 2.5 do not exist).
 * @source ISO 8501-1 (St, Sa), ISO 8501-4 (Wa). Confidence high.
 */
export const parseCleanliness = formula({ grade: cleanlinessGrade('grade') }, ({ grade }) => grade)

export type CleanlinessRelation = 'equal' | 'better' | 'worse' | 'incomparable'

/** How grade `a` stands to grade `b`: a partial order, total inside one family, `incomparable` across families. */
export function relateGrades(a: CleanlinessGrade, b: CleanlinessGrade): CleanlinessRelation {
  if (a.family !== b.family) return 'incomparable'
  const difference = Number(a.level) - Number(b.level)
  if (difference === 0) return 'equal'
  return difference > 0 ? 'better' : 'worse'
}

/** {@link relateGrades} for two written grades; refuses what {@link parseCleanliness} refuses. */
export const compareCleanliness = formula({ a: cleanlinessGrade('a'), b: cleanlinessGrade('b') }, ({ a, b }) => ({
  relation: relateGrades(a, b),
}))

const reaches = (a: CleanlinessGrade, b: CleanlinessGrade): boolean => ['equal', 'better'].includes(relateGrades(a, b))

/**
 * Whether a grade found meets the grade required: `meets`, `fails`, `not_comparable` across families, or
 * `meets_by_agreement` when an agreed pair [a, r] holds with found >= a and r >= required, one way only.
 * `isAgreementPresent` says whether any pair was given. Refuses `missing_grade`, `unknown_grade`.
 * @source ISO 8501-1, ISO 8501-4. Confidence high. AMPP joint standards correspond only by an agreed pair.
 */
export const cleanlinessMeets = formula(
  {
    actual: cleanlinessGrade('actual'),
    required: cleanlinessGrade('required'),
    cross: optional(list('cross', pair('cross', cleanlinessGrade('cross'), cleanlinessGrade('cross')))),
  },
  ({ actual, required, cross }) => {
    const agreed = cross ?? []
    const isAgreementPresent = agreed.length > 0
    if (actual.family === required.family) {
      return { verdict: reaches(actual, required) ? ('meets' as const) : ('fails' as const), isAgreementPresent }
    }
    const isAgreed = agreed.some(([found, serves]) => reaches(actual, found) && reaches(serves, required))
    return { verdict: isAgreed ? ('meets_by_agreement' as const) : ('not_comparable' as const), isAgreementPresent }
  },
)
