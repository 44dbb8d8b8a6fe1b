import { ActFold } from '@/app/_desk/act-fold'
import { ActForm } from '@/app/_desk/act-form'
import type { DeskField } from '@/app/_desk/desk-field'
import { mayAct, offsetOf } from '@/app/_desk/require-desk'
import { SecondForm } from '@/app/_desk/second-form'
import { liftQuarantineAction } from '@/app/(work)/actions/batch-actions'
import {
  checkInstrumentAction,
  findInstrumentWrongAction,
  quarantineInstrumentAction,
  recordCertificateAction,
} from '@/app/(work)/actions/instrument-actions'
import { showUnit, UNITS, type Unit } from '@/lib/domain/reading'
import type { InstrumentView } from '@/lib/server/views/instrument-view'
import { personChoices } from '@/lib/server/views/person-list-view'
import type { ReadingDesk } from '@/lib/server/views/reading-desk'

/** What the reader may do with an instrument today. */
export async function InstrumentActs({ reading, view }: { reading: ReadingDesk; view: InstrumentView }) {
  const { stream, isQuarantined, number } = view.state
  const utcOffset = offsetOf(reading)
  const heads = [{ stream, length: view.length }]
  const [first, ...rest] = view.registered.measures
  const units: readonly [Unit, ...Unit[]] = first ? [first, ...rest] : [...UNITS]
  const unitChoices = units.map((unit) => ({ id: unit, label: showUnit(unit) }))
  const certificate: readonly DeskField[] = [
    { kind: 'text', name: 'certificate', label: 'Certificate number' },
    { kind: 'day', name: 'calibratedOn', label: 'Calibrated on', optional: true },
    { kind: 'day', name: 'dueOn', label: 'Due on' },
    { kind: 'text', name: 'laboratory', label: 'Laboratory', optional: true },
    { kind: 'decimal', name: 'range.min', label: 'Range from', hint: 'State all three, or none', optional: true },
    { kind: 'decimal', name: 'range.max', label: 'Range to', optional: true },
    { kind: 'select', name: 'range.unit', label: 'Unit of the range', options: unitChoices, optional: true },
    { kind: 'measured', name: 'expandedUncertainty', label: 'Expanded uncertainty (k = 2)', units, optional: true },
  ]
  const check: readonly DeskField[] = [
    { kind: 'choice', name: 'coverage', label: 'Reference covers', options: ['full scale', 'mid scale'] },
    { kind: 'measured', name: 'reference', label: 'Value of the reference', units },
    { kind: 'reading', name: 'read', label: 'Read', units },
    { kind: 'measured', name: 'tolerance', label: 'Tolerance', units },
    { kind: 'choice', name: 'result', label: 'Result', options: ['within', 'outside'] },
  ]
  const wrong: readonly DeskField[] = [
    { kind: 'remark', name: 'how', label: 'How it was found', hint: 'Which reference, over which part of the scale' },
    {
      kind: 'measured',
      name: 'error',
      label: 'Error, where it is known and justified',
      hint: '+ when it read too high, − when too low. Leave empty when it is not known.',
      units,
      optional: true,
    },
    {
      kind: 'select',
      name: 'lastGoodFullCheck',
      label: 'Last good full check',
      hint: 'The search runs from it. Without one it runs from the first reading.',
      optional: true,
      options: view.fullChecks.map((one) => ({ id: one.fact, label: one.words })).reverse(),
    },
  ]
  return (
    <section className="acts" aria-label={`Acts on instrument ${number}`}>
      {mayAct(reading, 'check instrument') ? (
        <ActFold title="Record a check" note="on a reference piece">
          <ActForm
            action={checkInstrumentAction}
            kind="check-made"
            stream={stream}
            fields={check}
            utcOffset={utcOffset}
            submit="Record the check"
            done="Recorded."
          />
        </ActFold>
      ) : null}
      {mayAct(reading, 'keep instruments') ? (
        <ActFold title="Record a certificate">
          <ActForm
            action={recordCertificateAction}
            kind="certificate-recorded"
            stream={stream}
            fields={certificate}
            submit="Record the certificate"
            done="Recorded; earlier certificates stay."
          />
        </ActFold>
      ) : null}
      {mayAct(reading, 'find instrument wrong') ? (
        <ActFold title="Found wrong" note="results since the last good full check come in question">
          <ActForm
            action={findInstrumentWrongAction}
            kind="found-wrong"
            stream={stream}
            fields={wrong}
            heads={heads}
            utcOffset={utcOffset}
            submit="Record that it was found wrong"
            done="Recorded. Open its readings for the impact search."
            tone="stop"
          />
        </ActFold>
      ) : null}
      {!isQuarantined && mayAct(reading, 'quarantine') ? (
        <ActFold title="Quarantine" note="bars it everywhere at once">
          <ActForm
            action={quarantineInstrumentAction}
            kind="instrument-quarantined"
            stream={stream}
            heads={heads}
            utcOffset={utcOffset}
            fields={[{ kind: 'remark', name: 'reason', label: 'Reason' }]}
            submit="Quarantine the instrument"
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
    </section>
  )
}
