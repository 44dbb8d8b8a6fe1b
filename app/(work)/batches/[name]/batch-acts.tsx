import { ActFold } from '@/app/_desk/act-fold'
import { ActForm } from '@/app/_desk/act-form'
import type { Choice, DeskField } from '@/app/_desk/desk-field'
import { mayAct, offsetOf } from '@/app/_desk/require-desk'
import { SecondForm } from '@/app/_desk/second-form'
import {
  countBatchAction,
  issueBatchAction,
  liftQuarantineAction,
  openBatchAction,
  quarantineBatchAction,
  recallBatchAction,
  recordMakerLetterAction,
  refuseBatchAction,
  returnBatchAction,
  wasteBatchAction,
} from '@/app/(work)/actions/batch-actions'
import type { Unit } from '@/lib/domain/reading'
import type { BatchView } from '@/lib/server/views/batch-view'
import { clockKindOf } from '@/lib/server/views/clock-kind'
import { personChoices } from '@/lib/server/views/person-list-view'
import type { ReadingDesk } from '@/lib/server/views/reading-desk'
import { loadRepairStates } from '@/lib/server/views/repair-list-view'

const ALL_UNITS: readonly [Unit, ...Unit[]] = ['kg', 'g', 'kits', 'rolls', 'm', 'pcs', 'sets', 'ml']

/** What the reader may do with a batch today. */
export async function BatchActs({ reading, view }: { reading: ReadingDesk; view: BatchView }) {
  const { stream, number, received, isQuarantined } = view.state
  const utcOffset = offsetOf(reading)
  const clockKind = await clockKindOf(reading.desk.store, reading.actor.tenant)
  const units: readonly [Unit, ...Unit[]] = received.quantity ? [received.quantity.unit] : ALL_UNITS
  const repairs: Choice[] = (await loadRepairStates(reading)).map((state) => ({
    id: state.stream,
    label: `${state.number}, ${state.opened.body.line}`,
  }))
  const amount: DeskField = { kind: 'measured', name: 'quantity', label: 'Amount', units }
  const reason: DeskField = { kind: 'remark', name: 'reason', label: 'Reason' }
  const isKeeper = mayAct(reading, 'keep stores')
  const heads = [{ stream, length: view.length }]
  return (
    <section className="stack acts" aria-label={`Acts on batch ${number}`}>
      <div>
        {isKeeper ? (
          <>
            {view.events.some((event) => event.title === 'Opened') ? null : (
              <ActFold title="Open the package">
                <ActForm
                  action={openBatchAction}
                  kind="batch-opened"
                  stream={stream}
                  utcOffset={utcOffset}
                  stampAs={{ name: 'openedAt', clockKind }}
                  fields={[]}
                  submit="It was opened now"
                  done="Opened."
                />
              </ActFold>
            )}
            {isQuarantined ? null : (
              <ActFold title="Issue to a repair">
                <ActForm
                  action={issueBatchAction}
                  kind="batch-issued"
                  stream={stream}
                  utcOffset={utcOffset}
                  fields={[amount, { kind: 'select', name: 'to', label: 'To', options: repairs }]}
                  submit="Issue"
                  done="Issued."
                />
              </ActFold>
            )}
            <ActFold title="Take back">
              <ActForm
                action={returnBatchAction}
                kind="batch-returned"
                stream={stream}
                utcOffset={utcOffset}
                fields={[amount, { kind: 'select', name: 'from', label: 'From', options: repairs }]}
                submit="Take back"
                done="Taken back."
              />
            </ActFold>
            <ActFold title="Write off waste">
              <ActForm
                action={wasteBatchAction}
                kind="batch-wasted"
                stream={stream}
                utcOffset={utcOffset}
                fields={[
                  amount,
                  reason,
                  { kind: 'select', name: 'repair', label: 'At which repair', options: repairs, optional: true },
                ]}
                submit="Write off"
                done="Written off."
              />
            </ActFold>
            <ActFold title="Count what is left" note="closes the mass balance">
              <ActForm
                action={countBatchAction}
                kind="batch-counted"
                stream={stream}
                utcOffset={utcOffset}
                fields={[
                  {
                    ...amount,
                    label: 'Counted in the store',
                    hint: 'A count of nothing is 0; a batch not counted stays not counted.',
                  },
                ]}
                submit="Record the count"
                done="Counted."
              />
            </ActFold>
            <ActFold title="Maker’s letter with another use-by day">
              <ActForm
                action={recordMakerLetterAction}
                kind="maker-letter"
                stream={stream}
                fields={[
                  { kind: 'text', name: 'letter', label: 'Letter reference', hint: 'It must name this batch' },
                  { kind: 'day', name: 'expiresOn', label: 'Use by, as the letter says' },
                ]}
                submit="Record the letter"
                done="Recorded."
              />
            </ActFold>
            <ActFold title="Refuse it">
              <ActForm
                action={refuseBatchAction}
                kind="batch-refused"
                stream={stream}
                utcOffset={utcOffset}
                fields={[
                  reason,
                  { kind: 'select', name: 'repair', label: 'At which repair', options: repairs, optional: true },
                ]}
                submit="Refuse"
                done="Refused."
                tone="stop"
              />
            </ActFold>
          </>
        ) : null}
        {!isQuarantined && mayAct(reading, 'quarantine') ? (
          <ActFold title="Quarantine" note="bars it everywhere at once">
            <ActForm
              action={quarantineBatchAction}
              kind="batch-quarantined"
              stream={stream}
              utcOffset={utcOffset}
              heads={heads}
              fields={[reason]}
              submit="Quarantine the batch"
              done="Barred from use."
              tone="stop"
            />
          </ActFold>
        ) : null}
        {isQuarantined && mayAct(reading, 'lift quarantine') ? (
          <ActFold title="Lift the quarantine" note="with a second person">
            <SecondForm
              action={liftQuarantineAction}
              stream={stream}
              word="reason"
              label="Why it may be used again"
              submit="Lift the quarantine"
              done="Lifted."
              persons={await personChoices(reading, reading.actor.person)}
              needsSecond
              heads={heads}
            />
          </ActFold>
        ) : null}
        {!view.state.recalled && mayAct(reading, 'recall') ? (
          <ActFold title="Recall" note="every result that relies on it comes in question">
            <ActForm
              action={recallBatchAction}
              kind="batch-recalled"
              stream={stream}
              utcOffset={utcOffset}
              heads={heads}
              fields={[
                { kind: 'text', name: 'by', label: 'Recalled by', hint: 'The maker, or who speaks for him' },
                { kind: 'text', name: 'reference', label: 'Reference of the notice', optional: true },
                reason,
              ]}
              submit="Record the recall"
              done="Recalled and barred from use."
              tone="stop"
            />
          </ActFold>
        ) : null}
      </div>
    </section>
  )
}
