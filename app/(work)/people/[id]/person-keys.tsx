import { ActFold } from '@/app/_desk/act-fold'
import { ActForm } from '@/app/_desk/act-form'
import { mayAct } from '@/app/_desk/require-desk'
import { shortDevice } from '@/app/_ui/short-device'
import { endSigningKeyAction } from '@/app/(work)/actions/signing-actions'
import { type StreamId, streamName } from '@/lib/domain/facts/fact'
import { showMoment } from '@/lib/domain/time'
import type { PersonView } from '@/lib/server/views/person-view'
import type { ReadingDesk } from '@/lib/server/views/reading-desk'

/** The keys that sign for a person on devices; the holder or an administrator ends the key of a device that is lost. */
export function PersonKeys({ reading, view }: { reading: ReadingDesk; view: PersonView }) {
  const { state, keys, names } = view
  const mayEnd = reading.actor.person === state.id || mayAct(reading, 'administer')
  return (
    <section className="sheet" id="keys">
      <h2>Keys that sign on devices</h2>
      {keys.length === 0 ? (
        <p className="quiet">None. A key is made on the device itself: On site, Menu, Sign on this device.</p>
      ) : null}
      <ul className="plain-list">
        {keys.map(({ key, device, title, takenAt, ended }) => (
          <li key={key} className="stack tight">
            <span>
              <strong>{title ?? nameOf(device)}</strong>
              <br />
              <span className="quiet small">
                Signs since {showMoment(takenAt)}, behind a PIN
                {title ? `, ${nameOf(device)}` : ''}
              </span>
            </span>
            {ended ? (
              <span>
                Ended {showMoment(ended.at)} by {names[ended.by] ?? ended.by}: {ended.reason}. What it signed before
                stays signed.
              </span>
            ) : mayEnd ? (
              <ActFold title="End this key" note="the device is lost or passed on; from then on it signs nothing">
                <ActForm
                  action={endSigningKeyAction}
                  kind="signing-key-ended"
                  stream={device}
                  settled={{ key }}
                  fields={[{ kind: 'remark', name: 'reason', label: 'Why it is ended' }]}
                  submit="End the key"
                  done="Ended. It signs nothing more."
                  tone="stop"
                />
              </ActFold>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  )
}

function nameOf(device: StreamId): string {
  return `device ${shortDevice(streamName(device))}`
}
