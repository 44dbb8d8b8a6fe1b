import type { PersonId, StreamId } from '@/lib/domain/facts/fact'
import type { Meaning, Role } from '@/lib/domain/roles'
import type { CalendarDay } from '@/lib/domain/time'

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
  | { code: 'observer-not-allowed'; person: PersonId; day: CalendarDay; needs: Role[] }
  | { code: 'scan-missing' }
  | { code: 'own-transcription' }
  | { code: 'no-such-attempt' }
  | { code: 'not-decided'; why: string; detail: string[] }
  | { code: 'password-wrong' }
  | { code: 'too-many-tries'; retryAfterSeconds: number }
  | { code: 'signer-unknown' }
  | { code: 'signer-has-account' }
  | { code: 'witness-is-signer' }
  | { code: 'meaning-not-for-role'; meaning: Meaning; role: Role }
  /** The device's key is not known as the signer's on that device. */
  | { code: 'key-unknown' }
  | { code: 'key-ended'; endedAt: string }
  | { code: 'key-proof-wrong' }
  /** Facts or photos that a signature covers and that are not in the record as they were signed. */
  | { code: 'covers-differ'; facts: string[] }
  /** A decision made on a device is dated before what that device had entered already, or after now. */
  | { code: 'decision-misdated'; decidedAt: string; notBefore: string }
  | { code: 'blocks-form-a-cycle'; cycle: string[] }
  /** The number lies in a block that another device may be using where there is no network. */
  | { code: 'number-allotted-elsewhere'; number: string; from: string; to: string }
  | { code: 'draft-missing' }
  | { code: 'photo-refused'; reason: string; detail: string }

/** Every refusal code of the commands. */
export type RefusalCode = Refusal['code']
