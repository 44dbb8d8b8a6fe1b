import { parseReading } from '@/lib/domain/reading'
import { K, QI } from './demo-people'
import { at } from './demo-time'
import type { FactScript } from './fact-script'
import { scriptNcr0007 } from './ncr-0007'
import type { On0042 } from './repair-0042-tests'
import { HARDNESS } from './repair-figures'
import { closeHardness, recordHardness, stepCure } from './steps-after'
import { laterNotices } from './steps-notices'
import { probeSeries } from './steps-wrap'

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
