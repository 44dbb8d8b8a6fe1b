import type { FactId } from '@/lib/domain/facts/fact'
import { AU, E, L1, QI, S } from './demo-people'
import { at } from './demo-time'
import type { FactScript } from './fact-script'

/** NCR-0009: the window of MD-0043 lapsed and resin was mixed; replace, in action. */
export function scriptNcr0009(script: FactScript, { evidence }: { evidence: string[] }): void {
  const stream = 'nonconformance:NCR-0009'
  script.write({
    stream,
    kind: 'nonconformance-raised',
    at: at('05-27', '13:05'),
    by: L1,
    receivedAt: at('05-27', '13:21'),
    body: {
      number: 'NCR-0009',
      title: 'Wrap begun after the preparation window and without release',
      what: 'Preparation ended 08:50, window ended 12:35; M1 mixed 12:52 and primer brushed 12:55 at A-3. Weep at C-6 at 11:05, climate out of range from 11:15.',
      requirement: 'QP-MD-12 rev 4, 5.7, 6.2, 6.3 and 7.2',
      repair: 'repair:MD-0043',
      point: '14',
      attempt: 1,
      linked: [],
      evidence,
      blocks: ['05', '06', '07', '08', '09', '10', '11', '12', '13', '14', '15', '16', '17', '18', '19'],
      causeClass: 'weather',
    },
  })
  script.write({
    stream,
    kind: 'contained',
    at: at('05-27', '13:30'),
    by: L1,
    body: { action: 'Place barred, M1 scrapped, pressure held at 0.35 MPa.' },
  })
  script.write({
    stream,
    kind: 'assessed',
    at: at('05-27', '14:10'),
    by: QI,
    body: {
      finding: 'Filler sits over a weep; primer at A-3 on a surface past its window.',
      cause: 'Phone below ground could not see that the releases had fallen.',
    },
  })
  const proposal = script.write({
    stream,
    kind: 'disposition-proposed',
    at: at('05-27', '14:40'),
    by: QI,
    body: { disposition: 'replace', what: 'Strip filler and primer, attempt 2 from point 05.' },
  })
  script.write({
    stream,
    kind: 'disposition-approved',
    at: at('05-27', '15:30'),
    by: E,
    body: { proposal: proposal.id, party: 'engineer' },
  })
  script.write({
    stream,
    kind: 'action-started',
    at: at('05-28', '08:10'),
    by: L1,
    body: { what: 'Stripping of filler and primer.' },
  })
}

/** 05-28: the auditor's sample finds T2's year keyed wrong in the store; the correction, and NCR-0008, which awaits the engineer. */
export function scriptNcr0008(script: FactScript, { evidence }: { evidence: FactId[] }): void {
  const recorded = script.written.find(
    ({ fact }) => fact.stream === 'person:pavo-lindmarsh' && fact.kind === 'qualification-recorded',
  )
  if (!recorded) throw new Error('T2’s qualification must be scripted before its correction')
  const correction = script.write({
    stream: 'person:pavo-lindmarsh',
    kind: 'qualification-recorded',
    at: at('05-28', '10:05'),
    by: S,
    body: {
      number: 'Q-131',
      task: 'applicator',
      geometries: ['straight'],
      validTo: '2026-05-18',
      corrects: recorded.fact.id,
      reason: 'The certificate says 2026-05-18; the year was keyed as 2027.',
    },
  })
  const stream = 'nonconformance:NCR-0008'
  script.write({
    stream,
    kind: 'nonconformance-raised',
    at: at('05-28', '10:20'),
    by: AU,
    body: {
      number: 'NCR-0008',
      title: 'Applicator’s qualification ended the day before',
      what: 'M2 of MD-0042 was mixed on 2026-05-19 by P. Lindmarsh; Q-131 ended on 2026-05-18. The store held 2027-05-18.',
      requirement: 'QP-MD-12 rev 3, 4.3',
      repair: 'repair:MD-0042',
      point: '14',
      attempt: 1,
      linked: ['person:pavo-lindmarsh'],
      evidence: [correction.id, ...evidence],
      blocks: [],
      causeClass: 'data',
    },
  })
  script.write({
    stream,
    kind: 'contained',
    at: at('05-28', '10:45'),
    by: QI,
    body: { action: 'P. Lindmarsh mixes and wraps nothing until renewed; no other repair has his work after 05-18.' },
  })
  script.write({
    stream,
    kind: 'assessed',
    at: at('05-28', '14:00'),
    by: QI,
    body: {
      finding: 'M2: 760 + 288 g, ratio 37.9, used within its time; inspector present throughout.',
      cause: 'Year keyed wrong from the certificate.',
    },
  })
  script.write({
    stream,
    kind: 'disposition-proposed',
    at: at('05-28', '15:10'),
    by: QI,
    body: {
      disposition: 'no effect',
      what: 'Mix ratio 37.9 and working time kept, inspector present: no effect on the repair. Dossier revision 1 says so.',
    },
  })
}
