'use client'
import { useId, useRef, useState } from 'react'
import { v7 } from 'uuid'
import { OutboxRefusal } from '@/app/_parts/outbox-refusal'
import { answerOf } from '@/app/_ui/answer-of'
import { LabelledInput } from '@/app/_ui/labelled-input'
import { takeSigningKeyAction } from '@/app/(work)/actions/signing-actions'
import { type DeviceKey, makeDeviceKey } from '@/lib/capture/signing/device-key'
import { isPin } from '@/lib/capture/signing/pin-check'
import { FactId, PersonId } from '@/lib/domain/facts/fact'
import { PinField } from './pin-field'
import type { KeysHere } from './use-key-ring'
import type { Site } from './use-site'

/** Make a key on this device for a person: with their own password before the server, and a PIN. The key is kept once the server took it. */
export function MakeKey({ site, keys, say }: { site: Site; keys: KeysHere; say: (words: string) => void }) {
  const id = useId()
  const persons = personsOf(site)
  const [form, setForm] = useState({ person: '', password: '', pin: '', again: '' })
  const [refusal, setRefusal] = useState<{ code: string; [fact: string]: unknown } | null>(null)
  const [isBusy, setBusy] = useState(false)
  /** A key whose answer was lost: asked again it is the same one, not a second. */
  const asked = useRef<{ person: string; fact: FactId; key: DeviceKey } | null>(null)
  const chosen = persons.find((one) => one.person === form.person)
  const pinFault =
    form.pin === ''
      ? null
      : !isPin(form.pin)
        ? 'A PIN has 6 to 12 digits, not one digit throughout.'
        : form.again !== '' && form.again !== form.pin
          ? 'The two PINs differ.'
          : null
  const isReady = chosen && form.password !== '' && isPin(form.pin) && form.again === form.pin
  const make = async () => {
    const { ring } = keys
    if (!chosen || typeof ring !== 'object') return
    setBusy(true)
    setRefusal(null)
    try {
      const known = asked.current?.person === chosen.person ? asked.current : null
      const now = known ?? { person: chosen.person, fact: FactId.parse(v7()), key: await makeDeviceKey() }
      asked.current = now
      const device = await site.page.device()
      const answer = await answerOf(() =>
        takeSigningKeyAction({
          stream: `device:${device.id}`,
          body: { algorithm: 'ECDSA P-256 SHA-256', publicKey: now.key.publicKey },
          id: now.fact,
          device,
          signer: { by: 'password', person: chosen.person, password: form.password },
        }),
      )
      if (!answer.ok) return setRefusal(answer.error)
      const { tenant } = site.owner
      const { person, name } = chosen
      await ring.keep({ tenant, person, name, fact: now.fact, privateKey: now.key.privateKey }, form.pin)
      asked.current = null
      setForm({ person: '', password: '', pin: '', again: '' })
      await keys.refresh()
      // a repair on the device must know the key, else nobody could tell there that it speaks for its person
      for (const pack of site.packs) await site.take(pack.number)
      say(`${name} signs on this device from now on, with the PIN.`)
    } catch (cause) {
      // the server took the key and this device does not keep it: asked again it is the same key
      if (!(cause instanceof DOMException)) throw cause
      setRefusal({ code: cause.name === 'QuotaExceededError' ? 'storage-full' : 'storage-refused' })
    } finally {
      setBusy(false)
    }
  }
  return (
    <section className="sheet">
      <h2>Make a key</h2>
      <div className="stack">
        <div className="field">
          <label htmlFor={`${id}-who`}>Whose key</label>
          <select
            id={`${id}-who`}
            value={form.person}
            onChange={(event) => setForm({ person: event.target.value, password: '', pin: '', again: '' })}
          >
            <option value="">Choose</option>
            {persons.map((one) => (
              <option key={one.person} value={one.person}>
                {one.name}
                {one.person === site.owner.person ? ' (you)' : ''}
              </option>
            ))}
          </select>
        </div>
        {chosen ? (
          <>
            {keys.keys.some((one) => one.person === chosen.person) ? (
              <p className="note">
                {chosen.name} has a key here. A new one takes its place; what the old one signed stays signed.
              </p>
            ) : null}
            <LabelledInput
              label={`Password of ${chosen.name}`}
              type="password"
              value={form.password}
              change={(password) => setForm({ ...form, password })}
            />
            <PinField
              label="New PIN"
              hint="6 to 12 digits, keyed by its person alone"
              value={form.pin}
              change={(pin) => setForm({ ...form, pin })}
            />
            <PinField label="The PIN again" value={form.again} change={(again) => setForm({ ...form, again })} />
            {pinFault ? <p className="note warn">{pinFault}</p> : null}
          </>
        ) : null}
        {refusal ? <OutboxRefusal refusal={refusal} /> : null}
        <button type="button" className="button" disabled={isBusy || !isReady} onClick={() => void make()}>
          {isBusy ? 'Making the key' : 'Make the key'}
        </button>
      </div>
    </section>
  )
}

/** Who may have a key here: who works at this device first, then everyone with an account who signs in a repair taken along. */
function personsOf({ owner, packs }: Site): { person: PersonId; name: string }[] {
  const others = new Map(
    packs
      .flatMap((pack) => pack.signers ?? [])
      .filter((one) => one.hasAccount && one.person !== owner.person)
      .map((one) => [one.person, { person: one.person, name: one.name }]),
  )
  return [
    { person: PersonId.parse(owner.person), name: owner.name },
    ...[...others.values()].sort((a, b) => a.name.localeCompare(b.name)),
  ]
}
