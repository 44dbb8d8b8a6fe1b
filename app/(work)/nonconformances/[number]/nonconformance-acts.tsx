import { ActFold } from '@/app/_desk/act-fold'
import {
  approveDispositionAction,
  assessNonconformanceAction,
  closeNonconformanceAction,
  containNonconformanceAction,
  finishActionAction,
  rejectDispositionAction,
  startActionAction,
  verifyNonconformanceAction,
} from '@/app/(work)/actions/nonconformance-actions'
import type { Disposition } from '@/lib/domain/fold/fold-nonconformance'
import { PROPOSERS_OF_DISPOSITION } from '@/lib/domain/fold/may-move-nonconformance'
import type { NonconformanceView } from '@/lib/server/views/nonconformance-view'
import type { ReadingDesk } from '@/lib/server/views/reading-desk'
import { actsGround } from './acts-ground'
import { ProposeForm } from './propose-form'
import { SideActs } from './side-acts'

/** The next acts, offered only to who may do them; the same rule decides in the command. */
export function NonconformanceActs({ reading, view }: { reading: ReadingDesk; view: NonconformanceView }) {
  const ground = actsGround(reading, view)
  const { can, act, verdictOn, shared } = ground
  const { state } = view
  const proposal = state.proposal?.id ?? ''
  const parties = state.needsApproval.filter((party) => verdictOn({ kind: 'disposition-approved', party, proposal }).ok)
  const dispositions = (Object.keys(PROPOSERS_OF_DISPOSITION) as Disposition[]).filter(
    (disposition) => verdictOn({ kind: 'disposition-proposed', disposition }).ok,
  )
  return (
    <section className="acts" aria-label="Next acts">
      {can('contained')
        ? act(
            'Contain',
            'the immediate step that stops harm spreading',
            {
              action: containNonconformanceAction,
              kind: 'contained',
              fields: [{ kind: 'remark', name: 'action', label: 'What was done at once' }],
              submit: 'Record containment',
              done: 'Contained.',
            },
            true,
          )
        : null}
      {can('assessed')
        ? act(
            'Assess',
            '',
            {
              action: assessNonconformanceAction,
              kind: 'assessed',
              submit: 'Record the assessment',
              done: 'Assessed.',
              fields: [
                { kind: 'remark', name: 'finding', label: 'What was found' },
                { kind: 'remark', name: 'cause', label: 'Cause', optional: true },
              ],
            },
            state.state === 'contained',
          )
        : null}
      {dispositions.length > 0 ? (
        <ActFold title={state.proposal ? 'Propose anew' : 'Propose a disposition'} open={state.state === 'assessed'}>
          <ProposeForm view={view} dispositions={dispositions} shared={shared} />
        </ActFold>
      ) : null}
      {parties.map((party) =>
        act(
          `Approve for the ${party}`,
          state.proposal?.body.disposition ?? '',
          {
            action: approveDispositionAction,
            kind: 'disposition-approved',
            settled: { proposal, party },
            submit: 'Approve the disposition',
            done: 'Approved.',
            fields: [
              { kind: 'text', name: 'writing', label: 'Reference, where it is given in writing', optional: true },
            ],
          },
          true,
        ),
      )}
      {can('disposition-rejected')
        ? act('Reject the proposal', '', {
            action: rejectDispositionAction,
            kind: 'disposition-rejected',
            settled: { proposal },
            fields: [{ kind: 'remark', name: 'reason', label: 'Reason' }],
            submit: 'Reject the proposal',
            done: 'Rejected; another may be proposed.',
            tone: 'stop',
          })
        : null}
      {can('action-started')
        ? act(
            'Start the action',
            'who does it neither verifies nor closes it',
            {
              action: startActionAction,
              kind: 'action-started',
              fields: [{ kind: 'remark', name: 'what', label: 'What is being done' }],
              submit: 'Record the start',
              done: 'Started.',
            },
            true,
          )
        : null}
      {can('action-done')
        ? act('Action done', '', {
            action: finishActionAction,
            kind: 'action-done',
            fields: [{ kind: 'remark', name: 'what', label: 'What was done' }],
            submit: 'Record that it is done',
            done: 'Done.',
          })
        : null}
      {ground.isBarredAsDoer('verified') ? <OwnWork what="verifies" /> : null}
      {can('verified')
        ? act(
            'Verify',
            'that the action did what it should',
            {
              action: verifyNonconformanceAction,
              kind: 'verified',
              settled: { evidence: [] },
              fields: [{ kind: 'remark', name: 'how', label: 'How it was verified, on what evidence' }],
              submit: 'Verify',
              done: 'Verified.',
            },
            state.state === 'action in progress',
          )
        : null}
      {ground.isBarredAsDoer('closed') ? <OwnWork what="closes" /> : null}
      {can('closed')
        ? act(
            'Close',
            '',
            {
              action: closeNonconformanceAction,
              kind: 'closed',
              fields: [{ kind: 'remark', name: 'remark', label: 'Remark', optional: true }],
              submit: 'Close',
              done: 'Closed.',
            },
            true,
          )
        : null}
      <SideActs ground={ground} />
    </section>
  )
}

function OwnWork({ what }: { what: 'verifies' | 'closes' }) {
  return (
    <p className="note">
      <strong>You did the work or proposed it.</strong> <span>Someone else {what} it.</span>
    </p>
  )
}
