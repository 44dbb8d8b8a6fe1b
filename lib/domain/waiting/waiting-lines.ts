import type { PersonId } from '../facts/fact'
import type { PointState, RepairState } from '../fold/repair-state'
import type { Party, Role } from '../roles'
import { transcriptionLines } from './transcription-lines'
import type { WaitingLine } from './waiting-line'

const PARTY_OF: Partial<Record<Role, Party>> = {
  lead: 'crew',
  inspector: 'inspector',
  client: 'client',
  engineer: 'engineer',
}

/** What waits in one repair for a person with these roles: holds of their party to release, open points to record, nonconformances to decide. */
export function waitingLines(state: RepairState, roles: readonly Role[], me: PersonId): WaitingLine[] {
  const parties = roles.flatMap((role) => PARTY_OF[role] ?? [])
  const lines: WaitingLine[] = []
  const isOver = state.acceptance !== null
  for (const point of state.points) {
    const at = { repair: state.number, point: point.no, href: `/repairs/${state.number}/points/${point.no}` }
    const { current } = point
    lines.push(...transcriptionLines(point, at, roles, me))
    if (current.state === 'submitted' && point.awaiting.some((party) => parties.includes(party)))
      lines.push({
        ...at,
        kind: 'release',
        title: `Release of ${point.no} ${point.plan.title}`,
        detail: `verdict ${current.verdict}`,
      })
    else if (
      !isOver &&
      isOpen(point) &&
      (roles.includes('lead') || roles.includes('technician') || roles.includes('inspector'))
    )
      lines.push({
        ...at,
        kind: 'record',
        title: `${point.no} ${point.plan.title}`,
        detail: current.state === 'open' ? 'open, nothing recorded yet' : (current.missing[0] ?? current.state),
      })
    if (parties.includes('inspector')) lines.push(...decisionsAt(state, point, at))
  }
  for (const one of state.nonconformances.filter((ncr) => ncr.isOpen)) {
    const isMine = one.needsApproval.some((party) => parties.includes(party))
    const isAction = one.actions.some((action) => action.done === null && action.fact.body.owner === me)
    if (isMine || isAction || (parties.includes('inspector') && one.proposal === null))
      lines.push({
        repair: state.number,
        point: null,
        href: `/nonconformances/${one.number}`,
        kind: 'decide',
        title: `${one.number}: ${one.raised.body.title}`,
        detail: isMine
          ? `disposition proposed: ${one.proposal?.body.disposition ?? ''}`
          : isAction
            ? 'a corrective action is yours'
            : one.state,
      })
  }
  if (state.revisionDue && state.issues.length > 0 && parties.includes('inspector'))
    lines.push({
      repair: state.number,
      point: null,
      href: `/repairs/${state.number}/dossier`,
      kind: 'decide',
      title: `Dossier of ${state.number}: a revision is due`,
      detail: `last issued rev ${state.issues.at(-1)?.fact.body.revision ?? ''}`,
    })
  return lines
}

function isOpen(point: PointState): boolean {
  return (
    point.blockedBy.length === 0 &&
    ['open', 'in progress', 'refused', 'lapsed', 'withdrawn'].includes(point.current.state) &&
    point.plan.participation.crew !== null
  )
}

/** What an inspector decides at a point: conflicts first, for a release that one of them questions waits for the ruling alone. */
function decisionsAt(
  state: RepairState,
  point: PointState,
  at: Pick<WaitingLine, 'repair' | 'point' | 'href'>,
): WaitingLine[] {
  const { current, no, plan } = point
  const conflicts = state.conflicts.filter((one) => one.point === no && one.resolved === null)
  const [first] = conflicts
  if (first)
    return [
      {
        ...at,
        kind: 'decide',
        title: `${no} ${plan.title}: ${conflicts.length === 1 ? 'a conflict waits' : `${conflicts.length} conflicts wait`} for a ruling`,
        detail: first.text,
      },
    ]
  return current.state === 'in question'
    ? [
        {
          ...at,
          kind: 'decide',
          title: `${no} ${plan.title} is in question`,
          detail: current.questions[0]?.causeKind ?? 'decide its effect',
        },
      ]
    : []
}
