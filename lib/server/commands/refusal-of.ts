import { barrierTexts } from '@/lib/domain/barrier-texts'
import { type Result, refused } from '@/lib/domain/result'
import type { Role } from '@/lib/domain/roles'
import type { Act } from './authorise'
import type { Refusal } from './refusal'

type DomainRefusal = { code: string }
const WITHOUT_ATTEMPT: ReadonlySet<string> = new Set([
  'point-unknown',
  'attempt-unknown',
  'attempt-superseded',
  'attempt-taken',
])
type NeedsRoles = { code: 'not-allowed'; needs: Role[] }

/**
 * The command's refusal for a decision of the domain that was refused: a lacking role as `not-allowed`, a point or attempt that is not the
 * current one as `no-such-attempt`, anything else as `not-decided` with the domain's own code as `why` and its facts as texts.
 */
export function refusalOf(act: Act, error: DomainRefusal): Refusal {
  if (isNeedsRoles(error)) return { code: 'not-allowed', act, needs: error.needs }
  if (WITHOUT_ATTEMPT.has(error.code)) return { code: 'no-such-attempt' }
  const { code, ...facts } = error
  return { code: 'not-decided', why: code, detail: Object.values(facts).flatMap(barrierTexts) }
}

/** The refusal of a domain decision as a command gives it, or null where it was allowed. */
export function barrierOf(act: Act, decision: Result<true, DomainRefusal>): Refusal | null {
  return decision.ok ? null : refusalOf(act, decision.error)
}

/** The same as a result. */
export function refusedBy(act: Act, error: DomainRefusal): Result<never, Refusal> {
  return refused(refusalOf(act, error))
}

function isNeedsRoles(error: DomainRefusal): error is NeedsRoles {
  return error.code === 'not-allowed'
}
