import type { Role } from './roles'

/** `own`: only what the same person entered, or only within one's own job, site or lines. `with second`: with a second person. */
export type Permission = 'may' | 'own' | 'with second' | 'no'

/** Acts of the table of roles and permissions. */
export const ACTS = [
  'enter-observation',
  'enter-record',
  'attach-photo',
  'enter-receipt',
  'enter-remark',
  'note-event',
  'enter-in-service',
  'correct-entry',
  'check-transcription',
  'sign-performed',
  'sign-measured',
  'submit-point',
  'release-inspector-hold',
  'release-crew-hold',
  'release-engineer-hold',
  'release-client-hold',
  'waive-client-hold',
  'waive-engineer-hold',
  'mark-not-applicable',
  'propose-not-applicable',
  'agree-not-applicable',
  'open-attempt',
  'choose-governing-record',
  'judge-photo',
  'decide-impact',
  'decide-stands-or-redo',
  'edit-draft',
  'comment-draft',
  'approve-revision',
  'raise-nonconformance',
  'assess-nonconformance',
  'approve-disposition',
  'verify-nonconformance',
  'close-nonconformance',
  'quarantine',
  'request-quarantine',
  'lift-quarantine',
  'issue-dossier',
  'accept-repair',
  'sign-acceptance',
  'review-life',
  'raise-query',
  'answer-query',
  'send-notice',
  'open-repair',
  'hold-repair',
  'read-record',
  'read-technical-log',
  'keep-accounts',
  'change-records-or-limits',
] as const
export type Act = (typeof ACTS)[number]

type Row = Partial<Record<Role, Permission>>
const WORKERS: Row = { technician: 'may', lead: 'may', inspector: 'may' }
const ALL_WRITERS: Row = { ...WORKERS, client: 'may', engineer: 'may', stores: 'may', 'in-service inspector': 'may' }

/**
 * What each role may do; a role that a row does not name may not. Limits that depend on the case (not own work, not the doer, which disposition, own
 * or another's entry) are decided in lib/domain/fold/may-*.ts.
 */
export const PERMISSIONS: Readonly<Record<Act, Row>> = {
  'enter-observation': WORKERS,
  /** A record of some type: the design sheet is the engineer's, a receipt the stores'. Which type is whose stands in the rows beside. */
  'enter-record': { ...WORKERS, engineer: 'may', stores: 'may', 'in-service inspector': 'may' },
  'attach-photo': { ...WORKERS, stores: 'may', 'in-service inspector': 'may' },
  'enter-receipt': { ...WORKERS, stores: 'may' },
  'enter-remark': ALL_WRITERS,
  'note-event': ALL_WRITERS,
  'enter-in-service': { 'in-service inspector': 'may', inspector: 'may' },
  'correct-entry': {
    technician: 'own',
    lead: 'own',
    inspector: 'own',
    client: 'own',
    engineer: 'own',
    stores: 'own',
    'in-service inspector': 'own',
  },
  'check-transcription': { ...WORKERS, engineer: 'may', stores: 'may', 'in-service inspector': 'may' },
  'sign-performed': { technician: 'may', lead: 'may', stores: 'may', 'in-service inspector': 'may' },
  'sign-measured': { ...WORKERS, 'in-service inspector': 'may' },
  'submit-point': { ...WORKERS, engineer: 'may', stores: 'may', 'in-service inspector': 'may' },
  'release-inspector-hold': { inspector: 'may' },
  'release-crew-hold': { lead: 'may' },
  'release-engineer-hold': { engineer: 'may' },
  'release-client-hold': { client: 'may' },
  'waive-client-hold': { client: 'may' },
  'waive-engineer-hold': { engineer: 'may' },
  'mark-not-applicable': { inspector: 'may', engineer: 'may' },
  'propose-not-applicable': { lead: 'may' },
  'agree-not-applicable': { client: 'may' },
  'open-attempt': { lead: 'may', inspector: 'may' },
  'choose-governing-record': { inspector: 'may' },
  'judge-photo': { inspector: 'may' },
  'decide-impact': { inspector: 'may' },
  'decide-stands-or-redo': { engineer: 'may' },
  'edit-draft': { inspector: 'may', engineer: 'may' },
  'comment-draft': { client: 'may' },
  'approve-revision': { client: 'may', engineer: 'may', inspector: 'with second' },
  'raise-nonconformance': { ...ALL_WRITERS, auditor: 'may' },
  'assess-nonconformance': { inspector: 'may', engineer: 'may' },
  'approve-disposition': { inspector: 'may', client: 'may', engineer: 'may' },
  'verify-nonconformance': { inspector: 'may', stores: 'may' },
  'close-nonconformance': { inspector: 'may' },
  quarantine: { lead: 'may', inspector: 'may', stores: 'may' },
  'request-quarantine': { client: 'may', engineer: 'may' },
  'lift-quarantine': { inspector: 'with second', engineer: 'with second' },
  'issue-dossier': { inspector: 'may' },
  'accept-repair': { inspector: 'may' },
  'sign-acceptance': { inspector: 'may', client: 'may', engineer: 'may' },
  'review-life': { engineer: 'may' },
  'raise-query': { ...WORKERS, client: 'may' },
  'answer-query': { engineer: 'may' },
  'send-notice': { lead: 'may', inspector: 'may' },
  'open-repair': { lead: 'may', inspector: 'may' },
  'hold-repair': { lead: 'may', inspector: 'may' },
  'read-record': {
    technician: 'own',
    lead: 'own',
    inspector: 'may',
    client: 'own',
    engineer: 'own',
    stores: 'own',
    auditor: 'may',
    'in-service inspector': 'own',
  },
  'read-technical-log': { administrator: 'may' },
  'keep-accounts': { administrator: 'may' },
  'change-records-or-limits': {},
}

const STRENGTH: readonly Permission[] = ['no', 'own', 'with second', 'may']

/**
 * What a person with these roles may do: the strongest of them. Approving a revision as an inspector needs the right `approve`. No role, and no
 * right, may change records or limits directly.
 */
export function mayAct(act: Act, roles: readonly Role[], approve = false): Permission {
  const given = roles.map(
    (role): Permission =>
      act === 'approve-revision' && role === 'inspector' && !approve ? 'no' : (PERMISSIONS[act][role] ?? 'no'),
  )
  return given.reduce<Permission>(
    (strongest, one) => (STRENGTH.indexOf(one) > STRENGTH.indexOf(strongest) ? one : strongest),
    'no',
  )
}

/** Roles that hold an act in any measure, for a refusal that says who may. */
export function rolesFor(act: Act): Role[] {
  return Object.keys(PERMISSIONS[act]) as Role[]
}
