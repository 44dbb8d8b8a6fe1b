'use client'
import { useState } from 'react'
import { ReasonField } from '@/app/_parts/reason-field'
import { answerOf } from '@/app/_ui/answer-of'
import { RefusalNote, type ShownRefusal } from '@/app/_ui/refusal-note'
import { endSigningKeyAction } from '@/app/(work)/actions/signing-actions'
import { TRIES } from '@/lib/capture/signing/key-ring'
import type { KeyHere } from '@/lib/capture/signing/signers-here'
import type { KeysHere } from './use-key-ring'
import type { Site } from './use-site'

/** One key of this device and its end. An ended key is taken off the device; what it signed stays signed. */
export function KeyLine({
  site,
  keys,
  own,
  isEnded,
  say,
}: {
  site: Site
  keys: KeysHere
  own: KeyHere
  isEnded: boolean
  say: (words: string) => void
}) {
  const [reason, setReason] = useState<string | null>(null)
  const [refusal, setRefusal] = useState<ShownRefusal | null>(null)
  const [isBusy, setBusy] = useState(false)
  const drop = async () => {
    if (typeof keys.ring !== 'object') return
    await keys.ring.drop(site.owner.tenant, own.person)
    await keys.refresh()
    say(`The key of ${own.name} is off this device.`)
  }
  const end = async () => {
    setBusy(true)
    const device = await site.page.device()
    const body = { key: own.fact, reason: (reason ?? '').trim() }
    const answer = await answerOf(() => endSigningKeyAction({ stream: `device:${device.id}`, body, device }))
    setBusy(false)
    if (!answer.ok) return setRefusal(answer.error)
    await drop()
    say(`The key of ${own.name} was ended. It signs nothing more.`)
  }
  return (
    <li className="stack tight">
      <div className="row between">
        <strong>{own.name}</strong>
        <span className="quiet small">
          {isEnded
            ? 'ended in the record'
            : own.triesLeft === TRIES
              ? 'behind a PIN'
              : `${own.triesLeft} ${own.triesLeft === 1 ? 'try' : 'tries'} left`}
        </span>
      </div>
      <div className="row">
        {isEnded ? (
          <button type="button" className="button plain" onClick={() => void drop()}>
            Take it off this device
          </button>
        ) : (
          <button
            type="button"
            className="button plain"
            aria-expanded={reason !== null}
            onClick={() => setReason(reason === null ? '' : null)}
          >
            End this key
          </button>
        )}
      </div>
      {reason === null ? null : (
        <>
          <ReasonField label={`Why the key of ${own.name} is ended`} value={reason} change={setReason} />
          <p className="quiet small">
            Its holder or an administrator ends it, with a network. Signatures that wait here unsent are refused then:
            send them first.
          </p>
          <button
            type="button"
            className="button stop"
            disabled={isBusy || reason.trim().length < 3}
            onClick={() => void end()}
          >
            End it: it signs nothing more
          </button>
        </>
      )}
      {refusal ? <RefusalNote refusal={refusal} /> : null}
    </li>
  )
}
