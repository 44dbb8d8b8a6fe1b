import { expect, test } from 'vitest'
import { ACTS, type Act, mayAct, PERMISSIONS, type Permission, rolesFor } from '@/lib/domain/permissions'
import { ROLES, type Role } from '@/lib/domain/roles'

/** The table of rights as the job states it: technician, lead, inspector, client, engineer, stores, auditor, administrator. */
const COLUMNS: Role[] = ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'auditor', 'administrator']
const TABLE: [Act, string][] = [
  ['enter-observation', 'A A A - - - - -'],
  ['enter-remark', 'A A A A A A - -'],
  ['enter-receipt', 'A A A - - A - -'],
  ['correct-entry', 'o o o o o o - -'],
  ['sign-performed', 'A A - - - A - -'],
  ['release-inspector-hold', '- - A - - - - -'],
  ['release-crew-hold', '- A - - - - - -'],
  ['release-engineer-hold', '- - - - A - - -'],
  ['release-client-hold', '- - - A - - - -'],
  ['waive-client-hold', '- - - A - - - -'],
  ['mark-not-applicable', '- - A - A - - -'],
  ['edit-draft', '- - A - A - - -'],
  ['approve-revision', '- - w A A - - -'],
  ['raise-nonconformance', 'A A A A A A A -'],
  ['close-nonconformance', '- - A - - - - -'],
  ['quarantine', '- A A - - A - -'],
  ['request-quarantine', '- - - A A - - -'],
  ['lift-quarantine', '- - w - w - - -'],
  ['issue-dossier', '- - A - - - - -'],
  ['sign-acceptance', '- - A A A - - -'],
  ['read-record', 'o o A o o o A -'],
  ['keep-accounts', '- - - - - - - A'],
  ['change-records-or-limits', '- - - - - - - -'],
]
const LETTER: Record<string, Permission> = { A: 'may', o: 'own', w: 'with second', '-': 'no' }

test.each(TABLE)('%s', (act, row) => {
  expect(COLUMNS.map((role) => mayAct(act, [role], true))).toEqual(row.split(' ').map((letter) => LETTER[letter]))
})

test('nobody may change records or limits directly, with any role or right', () => {
  expect(mayAct('change-records-or-limits', [...ROLES], true)).toBe('no')
  expect(rolesFor('change-records-or-limits')).toEqual([])
})

test('an inspector approves a revision only with the right to approve, and then with a second person', () => {
  expect(mayAct('approve-revision', ['inspector'])).toBe('no')
  expect(mayAct('approve-revision', ['inspector'], true)).toBe('with second')
  expect(mayAct('approve-revision', ['inspector', 'engineer'])).toBe('may')
})

test('the in-service inspector enters point 21, reads what is his and raises nonconformances, nothing else of the job', () => {
  const held = ACTS.filter((act) => mayAct(act, ['in-service inspector']) !== 'no')
  expect(held).toEqual(expect.arrayContaining(['enter-in-service', 'raise-nonconformance', 'read-record']))
  expect(held).not.toEqual(expect.arrayContaining(['enter-observation']))
  expect(held.some((act) => act.startsWith('release') || act.startsWith('approve'))).toBe(false)
})

test('an administrator keeps accounts and reads the technical log only', () => {
  expect(ACTS.filter((act) => mayAct(act, ['administrator'], true) !== 'no')).toEqual([
    'read-technical-log',
    'keep-accounts',
  ])
})

test('every act has its row, and no role means no right', () => {
  expect(Object.keys(PERMISSIONS).sort()).toEqual([...ACTS].sort())
  expect(ACTS.filter((act) => mayAct(act, [], true) !== 'no')).toEqual([])
})
