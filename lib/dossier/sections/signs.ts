import type { AttemptState, ReleaseStateName } from '@/lib/domain/fold/repair-state'
import type { CriterionResult, VerdictKind } from '@/lib/domain/judge/verdict'
import { glyphOf } from '@/lib/domain/pictures/verdict-glyphs'
import type { Cell, Sign } from '../blocks'

const WORDS: Record<VerdictKind, string> = { pass: 'Pass', fail: 'Fail', 'not proven': 'Not proven' }

/** The sign of a verdict with its word. */
export function verdictSign(verdict: VerdictKind): Sign {
  return { glyph: glyphOf(verdict), text: WORDS[verdict] }
}

/** The cell of one criterion's verdict; a doubt about its basis stands beside the verdict and does not replace it. */
export function criterionCell(result: CriterionResult): Cell {
  const isOpen = result.questions.some((one) => one.decision === undefined)
  return {
    spans: isOpen ? [{ text: 'in question', face: 'bold', tone: 'in-question' }] : [],
    sign: verdictSign(result.verdict),
  }
}

/** Sign at the head of an attempt: its verdict; a concession never turns a fail into a pass. */
export function attemptSign(attempt: AttemptState): Sign {
  if (attempt.notApplicable) return { glyph: 'later', text: 'Not applicable' }
  if (attempt.records.length === 0) return { glyph: 'open', text: 'Nothing recorded' }
  if (attempt.criteria.length === 0) return { glyph: 'later', text: 'Recorded, not judged' }
  const { glyph, text } = verdictSign(attempt.verdict)
  return { glyph, text: attempt.conceded ? `${text}, conceded` : text }
}

/** State of an attempt as a sign, for tables. */
export function stateSign(attempt: AttemptState): Sign {
  const { state } = attempt
  if (state === 'in question' || attempt.questions.some((one) => one.decision === undefined))
    return { glyph: 'in-question', text: 'in question' }
  if (state === 'lapsed' || state === 'withdrawn') return { glyph: 'lapsed', text: state }
  if (state === 'passed without release' || state === 'refused') return { glyph: 'fail', text: state }
  if (state === 'released') return { glyph: 'pass', text: state }
  return {
    glyph: state === 'closed' || state === 'not applicable' || state === 'superseded' ? 'later' : 'open',
    text: state,
  }
}

/** State of a release as a sign. */
export function releaseSign(state: ReleaseStateName): Sign {
  if (state === 'valid' || state === 'used') return { glyph: 'pass', text: state }
  return { glyph: state === 'in question' ? 'in-question' : state === 'superseded' ? 'later' : 'lapsed', text: state }
}
