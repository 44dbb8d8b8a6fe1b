/** Roles per project; the right `approve` makes an inspector the quality manager. */
export const ROLES = [
  'technician',
  'lead',
  'inspector',
  'client',
  'engineer',
  'stores',
  'auditor',
  'in-service inspector',
  'administrator',
] as const
export type Role = (typeof ROLES)[number]

/** Parties that may hold, witness, review or monitor a point. */
export const PARTIES = ['crew', 'inspector', 'client', 'engineer'] as const
export type Party = (typeof PARTIES)[number]

/** Participation codes of an inspection and test plan. */
export const PARTICIPATION = ['H', 'W', 'R', 'M'] as const
export type Participation = (typeof PARTICIPATION)[number]

/** What a signature says. */
export const MEANINGS = [
  'performed',
  'measured',
  'checked',
  'witnessed',
  'reviewed',
  'released',
  'accepted',
  'approved',
] as const
export type Meaning = (typeof MEANINGS)[number]
