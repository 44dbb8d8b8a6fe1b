import { shortDevice } from '@/app/_ui/short-device'
import { FORMS } from '@/lib/capture/forms/form-table'
import type { PersonId } from '@/lib/domain/facts/fact'
import type { RecordState } from '@/lib/domain/fold/repair-state'
import { showMoment } from '@/lib/domain/time'
import { RecordValues } from './record-values'

/** Records that contradict each other, side by side: who took each, when and on which device, with every value. */
export function ConflictSides({ sides, names }: { sides: readonly RecordState[]; names: Record<PersonId, string> }) {
  return (
    <div className="conflict-sides">
      {sides.map(({ fact, record, corrections }) => (
        <article key={fact.id} className="group">
          <div>
            <h3>{FORMS[record.type].title}</h3>
            <span className="quiet small">
              {names[fact.observedBy] ?? fact.observedBy}, observed {showMoment(fact.observedAt)}
              <br />
              device {shortDevice(fact.device.id)}
              {corrections.length > 0 ? ', corrected since' : ''}
            </span>
          </div>
          <RecordValues record={record} names={names} />
        </article>
      ))}
    </div>
  )
}
