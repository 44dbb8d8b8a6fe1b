import {
  agreeDoesNotBlockAction, approveDispositionAction, assessNonconformanceAction, closeNonconformanceAction, containNonconformanceAction, finishActionAction, finishCorrectiveActionAction, nameCorrectiveActionAction,
  rejectDispositionAction, rejectNonconformanceAction, reopenNonconformanceAction, startActionAction, verifyNonconformanceAction, voidDuplicateAction,
} from '@/app/(work)/actions/nonconformance-actions'
import { ActFold } from '@/app/_desk/act-fold'
import { ActForm, type ActFormProps } from '@/app/_desk/act-form'
import { offsetOf } from '@/app/_desk/require-desk'
import { mayMoveNonconformance, type NonconformanceAct, PROPOSERS_OF_DISPOSITION } from '@/lib/domain/fold/may-move-nonconformance'
import type { Disposition } from '@/lib/domain/fold/fold-nonconformance'
import { decidingActor } from '@/lib/server/commands/decision-ground'
import { loadNonconformanceList } from '@/lib/server/views/nonconformance-list-view'
import type { NonconformanceView } from '@/lib/server/views/nonconformance-view'
import { personChoices } from '@/lib/server/views/person-list-view'
import type { ReadingDesk } from '@/lib/server/views/reading-desk'
import { ProposeForm } from './propose-form'

const REASON = { kind: 'remark', name: 'reason', label: 'Reason' } as const

/** The next acts, offered only to who may do them; the same rule decides in the command. */
export async function NonconformanceActs({ reading, view }: { reading: ReadingDesk; view: NonconformanceView }) {
  const { state, project } = view
  const utcOffset = offsetOf(reading)
  const actor = decidingActor(reading.desk, { project, offset: utcOffset })
  const verdictOn = (act: NonconformanceAct) => mayMoveNonconformance(state, act, actor)
  const can = (kind: Exclude<NonconformanceAct['kind'], 'disposition-proposed' | 'disposition-approved' | 'does-not-block'>) => verdictOn({ kind }).ok
  const isBarredAsDoer = (kind: 'verified' | 'closed') => { const answer = verdictOn({ kind }); return !answer.ok && (answer.error.code === 'doer-does-not-verify' || answer.error.code === 'second-inspector-needed') }
  const proposal = state.proposal?.id ?? ''
  const parties = state.needsApproval.filter((party) => verdictOn({ kind: 'disposition-approved', party, proposal }).ok)
  const dispositions = (Object.keys(PROPOSERS_OF_DISPOSITION) as Disposition[]).filter((disposition) => verdictOn({ kind: 'disposition-proposed', disposition }).ok)
  const shared = { stream: state.stream, heads: [{ stream: state.stream, length: view.length }], utcOffset }
  const act = (title: string, note: string, props: Omit<ActFormProps, keyof typeof shared>, open = false) => <ActFold key={title} title={title} {...(note ? { note } : {})} open={open}><ActForm {...shared} {...props} /></ActFold>
  const others = can('voided-duplicate') ? (await loadNonconformanceList(reading)).rows.filter((row) => row.stream !== state.stream).map((row) => ({ id: row.stream, label: `${row.number}: ${row.title}` })) : []
  const owners = can('corrective-action') ? [{ id: reading.actor.person, label: `${reading.actor.name} (yourself)` }, ...(await personChoices(reading, reading.actor.person))] : []
  const mine = state.actions.filter((one) => one.done === null && can('corrective-action-done'))
  return (
    <section className="acts" aria-label="Next acts">
      {can('contained') ? act('Contain', 'the immediate step that stops harm spreading', { action: containNonconformanceAction, kind: 'contained', fields: [{ kind: 'remark', name: 'action', label: 'What was done at once' }], submit: 'Record containment', done: 'Contained.' }, true) : null}
      {can('assessed') ? act('Assess', '', { action: assessNonconformanceAction, kind: 'assessed', fields: [{ kind: 'remark', name: 'finding', label: 'What was found' }, { kind: 'remark', name: 'cause', label: 'Cause', optional: true }], submit: 'Record the assessment', done: 'Assessed.' }, state.state === 'contained') : null}
      {dispositions.length > 0 ? <ActFold title={state.proposal ? 'Propose anew' : 'Propose a disposition'} open={state.state === 'assessed'}><ProposeForm view={view} dispositions={dispositions} shared={shared} /></ActFold> : null}
      {parties.map((party) => act(`Approve for the ${party}`, state.proposal?.body.disposition ?? '', { action: approveDispositionAction, kind: 'disposition-approved', settled: { proposal, party }, fields: [{ kind: 'text', name: 'writing', label: 'Reference, where it is given in writing', optional: true }], submit: 'Approve the disposition', done: 'Approved.' }, true))}
      {can('disposition-rejected') ? act('Reject the proposal', '', { action: rejectDispositionAction, kind: 'disposition-rejected', settled: { proposal }, fields: [REASON], submit: 'Reject the proposal', done: 'Rejected; another may be proposed.', tone: 'stop' }) : null}
      {can('action-started') ? act('Start the action', 'who does it neither verifies nor closes it', { action: startActionAction, kind: 'action-started', fields: [{ kind: 'remark', name: 'what', label: 'What is being done' }], submit: 'Record the start', done: 'Started.' }, true) : null}
      {can('action-done') ? act('Action done', '', { action: finishActionAction, kind: 'action-done', fields: [{ kind: 'remark', name: 'what', label: 'What was done' }], submit: 'Record that it is done', done: 'Done.' }) : null}
      {isBarredAsDoer('verified') ? <p className="note"><strong>You did the work or proposed it.</strong> <span>Someone else verifies it.</span></p> : null}
      {can('verified') ? act('Verify', 'that the action did what it should', { action: verifyNonconformanceAction, kind: 'verified', settled: { evidence: [] }, fields: [{ kind: 'remark', name: 'how', label: 'How it was verified, on what evidence' }], submit: 'Verify', done: 'Verified.' }, state.state === 'action in progress') : null}
      {isBarredAsDoer('closed') ? <p className="note"><strong>You did the work.</strong> <span>Someone else closes it.</span></p> : null}
      {can('closed') ? act('Close', '', { action: closeNonconformanceAction, kind: 'closed', fields: [{ kind: 'remark', name: 'remark', label: 'Remark', optional: true }], submit: 'Close', done: 'Closed.' }, true) : null}
      {mine.map(({ fact }) => act(`Corrective action done: ${fact.body.what}`, '', { action: finishCorrectiveActionAction, kind: 'corrective-action-done', settled: { action: fact.id }, fields: [{ kind: 'remark', name: 'evidence', label: 'Evidence' }], submit: 'Record it as done', done: 'Done.' }))}
      {can('corrective-action') ? act('Name a corrective action', 'tracked apart, with owner and day', { action: nameCorrectiveActionAction, kind: 'corrective-action', fields: [{ kind: 'remark', name: 'what', label: 'What shall be done' }, { kind: 'select', name: 'owner', label: 'Owner', options: owners }, { kind: 'day', name: 'dueOn', label: 'Due on' }], submit: 'Name it', done: 'Named.' }) : null}
      {(['engineer', 'client'] as const).filter((party) => verdictOn({ kind: 'does-not-block', party }).ok).map((party) => act(`Agree for the ${party}: does not block acceptance`, 'it takes both engineer and client', { action: agreeDoesNotBlockAction, kind: 'does-not-block', settled: { party }, fields: [REASON], submit: 'Agree', done: 'Agreed.' }))}
      {can('reopened') ? act('Reopen', '', { action: reopenNonconformanceAction, kind: 'reopened', fields: [REASON], submit: 'Reopen', done: 'Reopened.', tone: 'stop' }) : null}
      {can('not-a-nonconformance') ? act('Reject as not a nonconformance', 'stays listed', { action: rejectNonconformanceAction, kind: 'not-a-nonconformance', fields: [REASON], submit: 'Reject', done: 'Rejected; it stays listed.', tone: 'stop' }) : null}
      {others.length > 0 ? act('Void as a duplicate', 'its number is never used again', { action: voidDuplicateAction, kind: 'voided-duplicate', fields: [{ kind: 'select', name: 'of', label: 'Duplicate of', options: others }, REASON], submit: 'Void it', done: 'Voided.', tone: 'stop' }) : null}
    </section>
  )
}
