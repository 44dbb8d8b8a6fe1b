import {
  agreeDoesNotBlockAction,
  finishCorrectiveActionAction,
  nameCorrectiveActionAction,
  rejectNonconformanceAction,
  reopenNonconformanceAction,
  voidDuplicateAction,
} from '@/app/(work)/actions/nonconformance-actions'
import { loadNonconformanceList } from '@/lib/server/views/nonconformance-list-view'
import { personChoices } from '@/lib/server/views/person-list-view'
import type { ActsGround } from './acts-ground'

const REASON = { kind: 'remark', name: 'reason', label: 'Reason' } as const

/** What stands beside the one way: corrective actions, "does not block", reopening, rejecting, voiding. */
export async function SideActs({ ground }: { ground: ActsGround }) {
  const { reading, view, can, act, verdictOn } = ground
  const { state } = view
  const { person, name } = reading.actor
  const others = can('voided-duplicate')
    ? (await loadNonconformanceList(reading)).rows
        .filter((row) => row.stream !== state.stream)
        .map((row) => ({ id: row.stream, label: `${row.number}: ${row.title}` }))
    : []
  const owners = can('corrective-action')
    ? [{ id: person, label: `${name} (yourself)` }, ...(await personChoices(reading, person))]
    : []
  const undone = can('corrective-action-done') ? state.actions.filter((one) => one.done === null) : []
  const agreeing = (['engineer', 'client'] as const).filter((party) => verdictOn({ kind: 'does-not-block', party }).ok)
  return (
    <>
      {undone.map(({ fact }) =>
        act(`Corrective action done: ${fact.body.what}`, '', {
          action: finishCorrectiveActionAction,
          kind: 'corrective-action-done',
          settled: { action: fact.id },
          fields: [{ kind: 'remark', name: 'evidence', label: 'Evidence' }],
          submit: 'Record it as done',
          done: 'Done.',
        }),
      )}
      {can('corrective-action')
        ? act('Name a corrective action', 'tracked apart, with owner and day', {
            action: nameCorrectiveActionAction,
            kind: 'corrective-action',
            submit: 'Name it',
            done: 'Named.',
            fields: [
              { kind: 'remark', name: 'what', label: 'What shall be done' },
              { kind: 'select', name: 'owner', label: 'Owner', options: owners },
              { kind: 'day', name: 'dueOn', label: 'Due on' },
            ],
          })
        : null}
      {agreeing.map((party) =>
        act(`Agree for the ${party}: does not block acceptance`, 'it takes both engineer and client', {
          action: agreeDoesNotBlockAction,
          kind: 'does-not-block',
          settled: { party },
          fields: [REASON],
          submit: 'Agree',
          done: 'Agreed.',
        }),
      )}
      {can('reopened')
        ? act('Reopen', '', {
            action: reopenNonconformanceAction,
            kind: 'reopened',
            fields: [REASON],
            submit: 'Reopen',
            done: 'Reopened.',
            tone: 'stop',
          })
        : null}
      {can('not-a-nonconformance')
        ? act('Reject as not a nonconformance', 'stays listed', {
            action: rejectNonconformanceAction,
            kind: 'not-a-nonconformance',
            fields: [REASON],
            submit: 'Reject',
            done: 'Rejected; it stays listed.',
            tone: 'stop',
          })
        : null}
      {others.length > 0
        ? act('Void as a duplicate', 'its number is never used again', {
            action: voidDuplicateAction,
            kind: 'voided-duplicate',
            submit: 'Void it',
            done: 'Voided.',
            tone: 'stop',
            fields: [{ kind: 'select', name: 'of', label: 'Duplicate of', options: others }, REASON],
          })
        : null}
    </>
  )
}
