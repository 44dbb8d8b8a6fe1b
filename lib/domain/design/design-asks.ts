import type { RepairState } from '../fold/repair-state'
import { isApproved } from './design-approval'
import type { DesignSheet } from './design-sheet'

/** What is asked of the engineer on one page, each in one sentence: approval, findings, what is not computed, open queries, and dispositions that wait. */
export function designAsks(state: RepairState, sheet: DesignSheet): string[] {
  const inForce = sheet.revisions.find((one) => one.isInForce)
  const refused = [...new Set(sheet.equations.flatMap((one) => (one.refusal ? [`${one.title}: ${one.refusal}.`] : [])))]
  return [
    ...(inForce === undefined
      ? ['Record the design sheet: there is none.']
      : isApproved(inForce)
        ? []
        : [
            `Approve design sheet ${inForce.sheetNo} revision ${inForce.revision}, or revise it${inForce.approvals.length > 0 ? ': it was corrected after it was approved' : ''}.`,
          ]),
    ...sheet.findings,
    ...refused.map((one) => `Not computed. ${one}`),
    ...state.queries.flatMap((one) => (one.answer ? [] : [`Query ${one.fact.body.number}: ${one.fact.body.question}`])),
    ...state.nonconformances.flatMap((one) =>
      one.isOpen && ['raised', 'contained', 'assessed', 'disposition proposed', 'reopened'].includes(one.state)
        ? [`${one.number} is ${one.state}: ${one.raised.body.title}.`]
        : [],
    ),
  ]
}
