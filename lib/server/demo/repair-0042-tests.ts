import { decimal } from '@/lib/domain/decimal'
import { E, K, L1, QI } from './demo-people'
import { at } from './demo-time'
import { RESTRICTIONS, recordChecklist, recordTest } from './steps-acceptance'
import { stepFinished } from './steps-after'
import type { OnRepair } from './steps-before'

/** The repair MD-0042 on its way. */
export type On0042 = OnRepair & { number: 'MD-0042' }

/** Dimensions, the test that the client's representative did not attend, and the acceptance under concession. */
export function scriptTests0042(on: On0042): void {
  const { hand } = on
  const day = '05-22'
  stepFinished(on, { thickness: at(day, '09:05'), visual: at(day, '09:15'), closed: at(day, '09:20') })
  hand.answer('18', at(day, '10:40'), QI, {
    outcome: 'not attended, proceeded',
    waitedMinutes: decimal('40'),
    clause: 'QDM-2026-11, 9.4',
  })
  recordTest(
    on,
    day,
    [
      ['10:40', '1.214'],
      ['11:05', '1.211'],
      ['11:30', '1.210'],
      ['11:55', '1.210'],
    ],
    '13.1',
  )
  hand.close('18', at(day, '11:58'), {
    signs: [[QI, 'measured']],
    submittedBy: QI,
    releases: [
      ['crew', L1],
      ['inspector', QI],
    ],
  })
  recordChecklist(
    on,
    at(day, '15:40'),
    '4',
    '2027-02-22',
    'LBL-0042',
    'NCR-0007: point 15 conceded, life 4 years, first inspection after 9 months.',
  )
  hand.answer('19', at(day, '16:00'), QI, { outcome: 'attended' })
  hand.sign('19', at(day, '16:01'), QI, 'accepted')
  hand.sign('19', at(day, '16:01:30'), K, 'accepted', { method: { kind: 'in writing', reference: 'QDM-2026-11/C-07' } })
  hand.sign('19', at(day, '16:02'), E, 'accepted', { method: { kind: 'in writing', reference: 'OCH/2026/0042-C' } })
  hand.submit('19', at(day, '16:02:30'), QI)
  hand.release('19', at(day, '16:03'), 'crew', L1)
  hand.release('19', at(day, '16:03:20'), 'inspector', QI)
  hand.release('19', at(day, '16:03:40'), 'client', K)
  hand.write('accepted', at(day, '16:05'), QI, {
    kind: 'accepted under concession',
    lifeYears: decimal('4'),
    lifeFrom: '2026-05-22',
    nextInspectionOn: '2027-02-22',
    restrictions: RESTRICTIONS,
    concession: 'nonconformance:NCR-0007',
    conditions: [],
    heads: hand.heads(),
  })
}
