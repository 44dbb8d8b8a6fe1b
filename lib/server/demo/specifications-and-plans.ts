import type { Plan } from '@/lib/domain/plan'
import { planTemplate } from '@/lib/domain/templates/plan-template'
import { E, QJ } from './demo-people'
import { at } from './demo-time'
import type { FactScript } from './fact-script'
import { QP_MD_12_REV_3, QP_MD_12_REV_4, QP_MD_14_REV_1 } from './specifications'

/** The plan of the repairs by wet lay-up. */
export const ITP_MD_12: Plan = { ...planTemplate('wet lay-up'), number: 'ITP-MD-12' }
/** The plan of the repairs by water-activated tape. */
export const ITP_MD_14: Plan = { ...planTemplate('water-activated tape'), number: 'ITP-MD-14' }

/** MD-0042's own plan: the test is a witness point for the client, not a hold, and asks for no client's signature. */
export const ITP_MD_0042: Plan = {
  ...ITP_MD_12,
  number: 'ITP-MD-0042',
  title: 'Leak repair by wet lay-up, header MDW-200-HD1-0127',
  points: ITP_MD_12.points.map((point) =>
    point.no === '18'
      ? {
          ...point,
          participation: { ...point.participation, client: 'W' },
          signatures: point.signatures.filter((one) => one.role !== 'client'),
        }
      : point,
  ),
}

const APPROVAL = { approvedBy: E, second: QJ }

/** Specifications and plans issued until the end of May, each at its own day. */
export function scriptSpecificationsAndPlans(script: FactScript): void {
  script.write({
    stream: 'specification:QP-MD-12',
    kind: 'specification-issued',
    at: at('04-20', '09:00'),
    by: E,
    body: {
      revision: 3,
      issuedOn: '2026-04-20',
      body: QP_MD_12_REV_3,
      changes: 'Issued for the dewatering lines of Shaft 2.',
      ...APPROVAL,
    },
  })
  script.write({
    stream: 'plan:ITP-MD-12',
    kind: 'plan-issued',
    at: at('04-20', '10:00'),
    by: QJ,
    body: { revision: 1, issuedOn: '2026-04-20', body: ITP_MD_12, changes: 'First issue.', ...APPROVAL },
  })
  script.write({
    stream: 'specification:QP-MD-14',
    kind: 'specification-issued',
    at: at('04-28', '09:00'),
    by: E,
    body: { revision: 1, issuedOn: '2026-04-28', body: QP_MD_14_REV_1, changes: 'First issue.', ...APPROVAL },
  })
  script.write({
    stream: 'plan:ITP-MD-14',
    kind: 'plan-issued',
    at: at('04-28', '10:00'),
    by: QJ,
    body: { revision: 1, issuedOn: '2026-04-28', body: ITP_MD_14, changes: 'First issue.', ...APPROVAL },
  })
  script.write({
    stream: 'plan:ITP-MD-0042',
    kind: 'plan-issued',
    at: at('05-16', '10:00'),
    by: QJ,
    body: {
      revision: 1,
      issuedOn: '2026-05-16',
      body: ITP_MD_0042,
      changes: 'Pressure test is a witness point for the client.',
      ...APPROVAL,
    },
  })
  script.write({
    stream: 'specification:QP-MD-12',
    kind: 'specification-issued',
    at: at('05-25', '09:00'),
    by: E,
    body: {
      revision: 4,
      issuedOn: '2026-05-25',
      body: QP_MD_12_REV_4,
      changes: 'A second cure probe at the coldest clock position is mandatory (corrective action of NCR-0007).',
      ...APPROVAL,
    },
  })
}
