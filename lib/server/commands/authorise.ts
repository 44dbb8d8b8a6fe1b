import type { Meaning, Party, Role } from '@/lib/domain/roles'
import type { RecordType } from '@/lib/domain/records/record'
import type { StreamId } from '@/lib/domain/facts/fact'
import type { CalendarDay } from '@/lib/domain/time'
import type { Actor } from '@/lib/server/auth/actor'
import type { Refusal } from './refusal'

const CREW: Role[] = ['technician', 'lead']
const WORKERS: Role[] = [...CREW, 'inspector']
const WRITERS: Role[] = [...WORKERS, 'client', 'engineer', 'stores', 'in-service inspector']

/** Which roles may do what, per project and day; for nonconformances the domain says more closely who. The administrator keeps accounts and roles and touches no record; nobody changes records or limits directly. */
export const ACTS = {
  'enter observation': WORKERS,
  'enter design': ['engineer'],
  'enter receipts': [...WORKERS, 'stores'],
  'enter in-service inspection': ['in-service inspector', 'inspector'],
  'enter remark': WRITERS,
  'note event': WRITERS,
  'attach photo': [...WORKERS, 'stores', 'in-service inspector'],
  'correct own entry': WRITERS,
  submit: [...WORKERS, 'engineer', 'stores', 'in-service inspector'],
  'release crew hold': ['lead'],
  'release inspector hold': ['inspector'],
  'release client hold': ['client'],
  'release engineer hold': ['engineer'],
  'withdraw release': ['lead', 'inspector', 'client', 'engineer'],
  'mark not applicable': ['inspector', 'engineer'],
  'choose governing record': ['inspector'],
  'judge photo': ['inspector'],
  'open attempt': ['lead', 'inspector'],
  'open repair': ['lead', 'inspector'],
  'hold repair': ['lead', 'inspector'],
  'send notice': ['lead', 'inspector'],
  'waive client hold': ['client'],
  'waive engineer hold': ['engineer'],
  'raise query': [...WORKERS, 'client'],
  'answer query': ['engineer'],
  'decide revision': ['engineer'],
  'decide impact': ['inspector'],
  'review life': ['engineer'],
  'raise nonconformance': [...WRITERS, 'auditor'],
  'take a nonconformance on': WRITERS,
  'keep stores': ['stores'],
  recall: ['stores', 'inspector'],
  quarantine: ['lead', 'inspector', 'stores'],
  'lift quarantine': ['inspector', 'engineer'],
  'keep instruments': ['inspector', 'lead', 'stores'],
  'check instrument': WORKERS,
  'find instrument wrong': ['inspector'],
  'keep qualifications': ['inspector', 'lead'],
  'draft specification or plan': ['inspector', 'engineer'],
  'issue specification or plan': ['client', 'engineer', 'inspector'],
  'issue dossier': ['inspector'],
  'read record': ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'auditor', 'in-service inspector'],
  'accept repair': ['inspector'],
  'keep devices': [...WRITERS, 'auditor', 'administrator'],
  administer: ['administrator'],
} as const satisfies Record<string, readonly Role[]>
export type Act = keyof typeof ACTS

/** Null when the actor holds one of the act's roles in the project on the day (the administrator: in any); otherwise `not-allowed` with the roles that may. */
export function authorise(actor: Actor, project: StreamId | 'any', day: CalendarDay, act: Act): Refusal | null {
  const needs: readonly Role[] = ACTS[act]
  return actor.rolesOn(act === 'administer' ? 'any' : project, day).some((role) => needs.includes(role)) ? null : { code: 'not-allowed', act, needs: [...needs] }
}

/** The act of releasing for a party. */
export function releaseActOf(party: Party): Act {
  return `release ${party} hold`
}

/** The act of entering a record of a type: the design sheet is the engineer's, a remark anyone's. */
export function recordActOf(type: RecordType): Act {
  switch (type) {
    case 'design': return 'enter design'
    case 'remark': return 'enter remark'
    case 'stop': case 'weep': return 'note event'
    case 'materials': return 'enter receipts'
    case 'in-service': return 'enter in-service inspection'
    default: return 'enter observation'
  }
}

/** What each role may sign. A release and an acceptance are signed in the act itself or beside it by another party. */
export const MEANINGS_OF_ROLE: Record<Role, readonly Meaning[]> = {
  technician: ['performed', 'measured', 'checked'],
  lead: ['performed', 'measured', 'checked', 'released', 'reviewed'],
  inspector: ['measured', 'checked', 'witnessed', 'reviewed', 'released', 'accepted', 'approved'],
  client: ['witnessed', 'reviewed', 'released', 'accepted', 'approved'],
  engineer: ['performed', 'checked', 'witnessed', 'reviewed', 'released', 'accepted', 'approved'],
  stores: ['performed', 'checked'],
  'in-service inspector': ['performed', 'measured', 'checked'],
  auditor: [],
  administrator: [],
}

/** The party for which a role signs. */
export function partyOfRole(role: Role): Party {
  switch (role) {
    case 'inspector': case 'auditor': return 'inspector'
    case 'client': case 'in-service inspector': return 'client'
    case 'engineer': return 'engineer'
    default: return 'crew'
  }
}

/** The role that releases and signs for a party. */
export function roleOfParty(party: Party): Role {
  return party === 'crew' ? 'lead' : party
}
