import type { Party, Role } from '@/lib/domain/roles'

/** One person of the demo: identity, sign-in and role. All are invented. */
export type DemoPerson = {
  id: string
  name: string
  email: string
  role: Role
  title: string
  party: Party
  belongsTo: 'owner' | 'crew' | 'inspection body' | 'engineer'
  approve: boolean
}

/** Sign-in word of every demo account. It opens nothing but demo data. */
export const DEMO_PASSWORD = 'plumb-line-and-thrice'

function person(
  id: string,
  name: string,
  role: Role,
  title: string,
  party: Party,
  belongsTo: DemoPerson['belongsTo'],
  approve = false,
): DemoPerson {
  return { id, name, email: `${id.replaceAll('-', '.')}@plumbline.example`, role, title, party, belongsTo, approve }
}

/** The people of the demo, one sign-in each. */
export const DEMO_PEOPLE: readonly DemoPerson[] = [
  person('dorrit-akande', 'Dorrit Akande', 'technician', 'Applicator', 'crew', 'crew'),
  person('pavo-lindmarsh', 'Pavo Lindmarsh', 'technician', 'Applicator', 'crew', 'crew'),
  person('maren-osterfalk', 'Maren Osterfalk', 'lead', 'Supervisor', 'crew', 'crew'),
  person('tobias-wrenfield', 'Tobias Wrenfield', 'inspector', 'Quality inspector', 'inspector', 'inspection body'),
  person('ysolde-pender', 'Ysolde Pender', 'inspector', 'Quality manager', 'inspector', 'inspection body', true),
  person('ludmila-stannard', 'Ludmila Stannard', 'client', 'Client’s representative', 'client', 'owner'),
  person('ravi-castellane', 'Ravi Castellane', 'engineer', 'Designer', 'engineer', 'engineer'),
  person('odile-brackhurst', 'Odile Brackhurst', 'stores', 'Stores keeper', 'crew', 'crew'),
  person('hesper-noorland', 'Hesper Noorland', 'auditor', 'Auditor', 'inspector', 'inspection body'),
  person('jonah-tolliver', 'Jonah Tolliver', 'in-service inspector', 'In-service inspector', 'client', 'owner'),
  person('imre-valecross', 'Imre Valecross', 'administrator', 'Administrator', 'inspector', 'inspection body'),
]

/** Short names for the script. */
export const T1 = 'dorrit-akande'
export const T2 = 'pavo-lindmarsh'
export const L1 = 'maren-osterfalk'
export const QI = 'tobias-wrenfield'
export const QJ = 'ysolde-pender'
export const K = 'ludmila-stannard'
export const E = 'ravi-castellane'
export const S = 'odile-brackhurst'
export const AU = 'hesper-noorland'
export const IS = 'jonah-tolliver'
export const ADMIN = 'imre-valecross'

/** A person of the demo by id. @throws RangeError for an id that is not of the table */
export function demoPerson(id: string): DemoPerson {
  const found = DEMO_PEOPLE.find((one) => one.id === id)
  if (!found) throw new RangeError(`Expected a person of the demo, received ${id}`)
  return found
}
