import { type Meaning, type Party, ROLES, type Role } from '../roles'

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

/** The roles that sign a meaning. */
export function rolesSigning(meaning: Meaning): Role[] {
  return ROLES.filter((role) => MEANINGS_OF_ROLE[role].includes(meaning))
}

/** The party for which a role signs. */
export function partyOfRole(role: Role): Party {
  switch (role) {
    case 'inspector':
    case 'auditor':
      return 'inspector'
    case 'client':
    case 'in-service inspector':
      return 'client'
    case 'engineer':
      return 'engineer'
    default:
      return 'crew'
  }
}

/** The role that releases and signs for a party. */
export function roleOfParty(party: Party): Role {
  return party === 'crew' ? 'lead' : party
}

/** Whether a role may sign a meaning; an inspector signs *approved* with the right to approve only. */
export function maySign(role: Role, meaning: Meaning, mayApprove: boolean): boolean {
  return MEANINGS_OF_ROLE[role].includes(meaning) && (meaning !== 'approved' || role !== 'inspector' || mayApprove)
}
