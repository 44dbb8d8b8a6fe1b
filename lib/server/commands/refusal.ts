import type { StreamId } from '@/lib/domain/facts/fact'
import type { Meaning, Role } from '@/lib/domain/roles'

/** A stream whose facts moved on since the decision looked at it. */
export type MovedHead = { stream: StreamId; seen: number; now: number }

/**
 * Why a command did not do what was asked. `not-found` also answers for whatever belongs to another tenant. Codes never change once logged.
 */
export type Refusal =
  | { code: 'invalid'; fields: Record<string, string[]> }
  | { code: 'not-signed-in' }
  | { code: 'not-found' }
  | { code: 'not-allowed'; act: string; needs: Role[] }
  | { code: 'not-own-role' }
  | { code: 'not-own-entry' }
  | { code: 'second-person-missing' }
  | { code: 'exists-already'; stream: StreamId }
  | { code: 'heads-moved'; moved: MovedHead[] }
  | { code: 'id-taken' }
  | { code: 'late-reason-missing'; minutesLate: number }
  | { code: 'entered-in-future' }
  | { code: 'value-moved'; path: string }
  | { code: 'no-such-attempt' }
  | { code: 'not-decided'; why: string; detail: string[] }
  | { code: 'password-wrong' }
  | { code: 'too-many-tries'; retryAfterSeconds: number }
  | { code: 'signer-unknown' }
  | { code: 'signer-has-account' }
  | { code: 'witness-is-signer' }
  | { code: 'meaning-not-for-role'; meaning: Meaning; role: Role }
  | { code: 'blocks-form-a-cycle'; cycle: string[] }
  | { code: 'draft-missing' }
  | { code: 'photo-refused'; reason: string; detail: string }

/** Every refusal code of the commands. */
export type RefusalCode = Refusal['code']
