import type { StreamId } from '@/lib/domain/facts/fact'
import { rolesFor } from '@/lib/domain/permissions'
import type { RecordType } from '@/lib/domain/records/record'
import type { Party, Role } from '@/lib/domain/roles'
import type { CalendarDay } from '@/lib/domain/time'
import type { Actor } from '@/lib/server/auth/actor'
import type { Refusal } from './refusal'

const WRITERS = rolesFor('enter-remark')

/**
 * Which roles may do what, per project and day: the domain's table of permissions by the acts of commands, and the keeping of stores, instruments and
 * persons beside it. For nonconformances the domain says more closely who. Nobody changes records or limits directly.
 */
export const ACTS = {
  'enter observation': rolesFor('enter-observation'),
  'enter design': ['engineer'],
  'enter receipts': rolesFor('enter-receipt'),
  'enter in-service inspection': rolesFor('enter-in-service'),
  'enter remark': WRITERS,
  'note event': rolesFor('note-event'),
  'attach photo': rolesFor('attach-photo'),
  'correct own entry': rolesFor('correct-entry'),
  'check transcription': rolesFor('check-transcription'),
  submit: rolesFor('submit-point'),
  'release crew hold': rolesFor('release-crew-hold'),
  'release inspector hold': rolesFor('release-inspector-hold'),
  'release client hold': rolesFor('release-client-hold'),
  'release engineer hold': rolesFor('release-engineer-hold'),
  'withdraw release': ['lead', 'inspector', 'client', 'engineer'],
  'mark not applicable': rolesFor('mark-not-applicable'),
  'choose governing record': rolesFor('choose-governing-record'),
  'judge photo': rolesFor('judge-photo'),
  'discharge condition': rolesFor('accept-repair'),
  'open attempt': rolesFor('open-attempt'),
  'open repair': rolesFor('open-repair'),
  'hold repair': rolesFor('hold-repair'),
  'send notice': rolesFor('send-notice'),
  'waive client hold': rolesFor('waive-client-hold'),
  'waive engineer hold': rolesFor('waive-engineer-hold'),
  'raise query': rolesFor('raise-query'),
  'answer query': rolesFor('answer-query'),
  'decide revision': rolesFor('decide-stands-or-redo'),
  'decide impact': rolesFor('decide-impact'),
  'review life': rolesFor('review-life'),
  'raise nonconformance': rolesFor('raise-nonconformance'),
  'take a nonconformance on': WRITERS,
  'keep stores': ['stores'],
  recall: ['stores', 'inspector'],
  quarantine: rolesFor('quarantine'),
  'lift quarantine': rolesFor('lift-quarantine'),
  'keep instruments': ['inspector', 'lead', 'stores'],
  'check instrument': rolesFor('enter-observation'),
  'find instrument wrong': ['inspector'],
  'keep qualifications': ['inspector', 'lead'],
  'draft specification or plan': rolesFor('edit-draft'),
  'issue specification or plan': rolesFor('approve-revision'),
  'issue dossier': rolesFor('issue-dossier'),
  'read record': rolesFor('read-record'),
  'accept repair': rolesFor('accept-repair'),
  'keep devices': [...WRITERS, 'auditor', 'administrator'],
  administer: rolesFor('keep-accounts'),
} as const satisfies Record<string, readonly Role[]>
export type Act = keyof typeof ACTS

/** Null when the actor holds one of the act's roles in the project on the day (the administrator: in any); otherwise `not-allowed` with the roles that may. */
export function authorise(actor: Actor, project: StreamId | 'any', day: CalendarDay, act: Act): Refusal | null {
  const needs: readonly Role[] = ACTS[act]
  return actor.rolesOn(act === 'administer' ? 'any' : project, day).some((role) => needs.includes(role))
    ? null
    : { code: 'not-allowed', act, needs: [...needs] }
}

/** The act of releasing for a party. */
export function releaseActOf(party: Party): Act {
  return `release ${party} hold`
}

/** The act of entering a record of a type: the design sheet is the engineer's, a remark anyone's. */
export function recordActOf(type: RecordType): Act {
  switch (type) {
    case 'design':
      return 'enter design'
    case 'remark':
      return 'enter remark'
    case 'stop':
    case 'weep':
      return 'note event'
    case 'materials':
      return 'enter receipts'
    case 'in-service':
      return 'enter in-service inspection'
    default:
      return 'enter observation'
  }
}
