import { decimal } from '@/lib/domain/decimal'
import { E, K, L1, QI, QJ } from './demo-people'
import { at } from './demo-time'
import type { FactScript } from './fact-script'

const NCR = 'nonconformance:NCR-0007'

/** NCR-0007: hardness low after the extended cure on MD-0042; repair by post-cure under concession, closed on 05-22. The action is tracked apart. */
export function scriptNcr0007(script: FactScript, { evidence }: { evidence: string[] }): void {
  script.write({
    stream: NCR,
    kind: 'nonconformance-raised',
    at: at('05-21', '09:20'),
    by: QI,
    body: {
      number: 'NCR-0007',
      title: 'Laminate hardness low after the extended cure',
      what: 'T2: five marks below 74 Shore D at 6 o’clock, mean 74.90. The probe at 6 o’clock read 12.9 °C; the logger had been at 3 o’clock only.',
      requirement: 'QP-MD-12 rev 3, 10.7, 11.1 and 11.2',
      repair: 'repair:MD-0042',
      point: '16',
      attempt: 2,
      linked: [],
      evidence,
      blocks: ['17', '18', '19'],
      causeClass: 'method',
    },
  })
  script.write({
    stream: NCR,
    kind: 'contained',
    at: at('05-21', '09:25'),
    by: QI,
    body: { action: 'Pressure held at or below 0.40 MPa; repair taped off.' },
  })
  script.write({
    stream: NCR,
    kind: 'assessed',
    at: at('05-21', '11:00'),
    by: QI,
    body: {
      finding: 'Cold water in the pipe kept 6 o’clock at 12.9 °C while the probe at 3 o’clock read 17.1 °C or more.',
      cause: 'One probe, not at the coldest clock position.',
    },
  })
  const proposal = script.write({
    stream: NCR,
    kind: 'disposition-proposed',
    at: at('05-21', '11:40'),
    by: E,
    body: {
      disposition: 'repair',
      what: 'Post-cure by blanket at 45 °C for 8 h, full grid again; point 15 conceded; life 4 years for 10, first inspection after 9 months.',
      limits: { lifeYears: decimal('4'), nextInspectionOn: '2027-02-22', other: 'No rise of the design pressure.' },
      conceded: [{ point: '15', attempt: 2 }],
    },
  })
  script.write({
    stream: NCR,
    kind: 'disposition-approved',
    at: at('05-21', '13:10'),
    by: E,
    body: { proposal: proposal.id, party: 'engineer', writing: 'OCH/2026/0042-C' },
  })
  script.write({
    stream: NCR,
    kind: 'disposition-approved',
    at: at('05-21', '13:10:20'),
    by: K,
    body: { proposal: proposal.id, party: 'client', writing: 'QDM-2026-11/C-07' },
  })
  const action = script.write({
    stream: NCR,
    kind: 'corrective-action',
    at: at('05-21', '13:30'),
    by: QI,
    body: { what: 'Specification: a probe at the coldest clock position is mandatory.', owner: E, dueOn: '2026-05-29' },
  })
  script.write({
    stream: NCR,
    kind: 'action-started',
    at: at('05-21', '14:00'),
    by: L1,
    body: { what: 'Post-cure blanket on.' },
  })
  script.write({
    stream: NCR,
    kind: 'action-done',
    at: at('05-21', '22:00'),
    by: L1,
    body: { what: 'Post-cure ended.' },
  })
  script.write({
    stream: NCR,
    kind: 'verified',
    at: at('05-22', '08:55'),
    by: QJ,
    body: {
      how: 'T3 read through: 20 marks, least 76, mean 78.40; limits of life and inspection stand in the register entry.',
      evidence: [],
    },
  })
  script.write({
    stream: NCR,
    kind: 'closed',
    at: at('05-22', '14:20'),
    by: QJ,
    body: { remark: 'The corrective action is tracked apart.' },
  })
  script.write({
    stream: NCR,
    kind: 'corrective-action-done',
    at: at('05-25', '09:30'),
    by: E,
    body: { action: action.id, evidence: 'QP-MD-12 rev 4, issued 2026-05-25.' },
  })
}
