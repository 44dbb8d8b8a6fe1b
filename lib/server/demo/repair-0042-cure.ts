import { decimal } from '@/lib/domain/decimal'
import { parseReading } from '@/lib/domain/reading'
import { E, K, L1, QI } from './demo-people'
import { at } from './demo-time'
import type { FactScript } from './fact-script'
import { scriptNcr0007 } from './ncr-0007'
import { HARDNESS } from './repair-figures'
import {
  closeHardness,
  RESTRICTIONS,
  recordChecklist,
  recordHardness,
  recordTest,
  stepCure,
  stepFinished,
} from './steps-after'
import type { OnRepair } from './steps-before'
import { laterNotices } from './steps-notices'
import { probeSeries } from './steps-wrap'

type On0042 = OnRepair & { number: 'MD-0042' }

/** Cure by a probe at 3 o'clock only, T1, the extended cure, T2, NCR-0007, the post-cure and T3. */
export function scriptCure0042(script: FactScript, on: On0042): void {
  const { hand } = on
  const first = { startedAt: at('05-19', '12:00'), endedAt: at('05-20', '06:00') }
  stepCure(
    on,
    {
      ...first,
      logger: 'instrument:CL-08',
      heatSource: 'none',
      postCure: 'no',
      probes: [{ place: '3 o’clock', clock: '3', series: probeSeries('MD-0042 3', first.startedAt, first.endedAt) }],
      remark: 'One probe, at 3 o’clock. Read as met.',
    },
    at('05-20', '06:03'),
  )
  laterNotices(on, '05-20')
  firstTest(on)
  hand.write('attempt-opened', at('05-20', '08:50'), QI, {
    points: ['15', '16'],
    attempt: 2,
    reason:
      'Extended cure, allowed once by the specification: the probe moved to 6 o’clock shows 12.9 °C, cold water in the pipe.',
  })
  const extended = { startedAt: at('05-20', '08:55'), endedAt: at('05-21', '08:45') }
  laterNotices(on, '05-21', '06:20')
  testNotice(on)
  stepCure(
    on,
    {
      ...extended,
      logger: 'instrument:CL-08',
      heatSource: 'none',
      postCure: 'no',
      probes: [
        {
          place: '6 o’clock',
          clock: '6',
          series: probeSeries('MD-0042 extended 6', extended.startedAt, extended.endedAt),
        },
        {
          place: '3 o’clock',
          clock: '3',
          series: probeSeries('MD-0042 extended 3', extended.startedAt, extended.endedAt),
        },
      ],
      remark: 'Probe moved to 6 o’clock: 12.9 °C, cold water in the pipe.',
    },
    at('05-21', '08:48'),
    2,
  )
  const second = recordHardness(on, at('05-21', '09:00'), HARDNESS['MD-0042 T2'], '17.2', 2)
  refuse(on, '05-21', '09:10', 2, 'Five marks below 74, all at 6 o’clock, the least 69 at C-6; mean 74.90 below 77.')
  scriptNcr0007(script, {
    evidence: [
      second.id,
      ...hand
        .at('15', 2)
        .filter((fact) => fact.kind === 'recorded')
        .map((fact) => fact.id),
    ],
  })
  laterNotices(on, '05-21', '13:20')
  hand.write('attempt-opened', at('05-21', '13:25'), QI, {
    points: ['16'],
    attempt: 3,
    reason: 'Post-cure approved: the full grid is tested again after it.',
    nonconformance: 'nonconformance:NCR-0007',
  })
  const post = { startedAt: at('05-21', '14:00'), endedAt: at('05-21', '22:00') }
  stepCure(
    on,
    {
      ...post,
      logger: 'instrument:CL-08',
      heatSource: 'blanket at 45 °C',
      postCure: 'yes',
      probes: [
        { place: '6 o’clock', clock: '6', series: probeSeries('MD-0042 post-cure 6', post.startedAt, post.endedAt) },
      ],
    },
    at('05-21', '22:04'),
    2,
  )
  recordHardness(on, at('05-22', '08:30'), HARDNESS['MD-0042 T3'], '17.4', 3)
  closeHardness(on, at('05-22', '08:42'), 3)
}

/** Notice of the test, to which no answer came. */
function testNotice({ hand }: On0042): void {
  hand.notice('18', at('05-21', '07:50'), QI, K, at('05-22', '10:00'))
}

/** T1 with the swapped digits at C-12: signed, corrected, signed again, refused. */
function firstTest(on: On0042): void {
  const { hand } = on
  const rows = HARDNESS['MD-0042 T1']
  const fact = recordHardness(on, at('05-20', '08:10'), rows, '17.3', 1, { ...rows, '12': '75 76 47 75 76' })
  hand.sign('16', at('05-20', '08:20'), QI, 'measured')
  hand.correct(
    at('05-20', '08:31'),
    QI,
    fact,
    [{ path: ['readings', 2, 'reading'], from: parseReading('47', 'ShoreD'), to: parseReading('74', 'ShoreD') }],
    'digits swapped, photo shows 74',
  )
  refuse(on, '05-20', '08:34', 1, 'Twelve marks below 74, the least 63 at C-6; mean 71.50 below 77.')
}

function refuse({ hand }: On0042, day: string, clock: string, attempt: number, reason: string): void {
  hand.close('16', at(day, clock), {
    attempt,
    signs: [
      [QI, 'measured'],
      [K, 'witnessed'],
    ],
    submittedBy: QI,
    releases: [],
  })
  hand.write('release-refused', at(day, `${clock}:50`), QI, {
    point: '16',
    attempt,
    party: 'inspector',
    reason,
    heads: hand.heads(),
  })
}

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
