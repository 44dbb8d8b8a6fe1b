'use client'
import { useState } from 'react'
import { readNow } from '@/app/_capture/read-now'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { sendNoticeAction } from '@/app/(work)/actions/repair-actions'
import type { Party } from '@/lib/domain/roles'
import { useAct } from './act-note'

export type PointChoice = { no: string; title: string; attempt?: number }

/** Give notice of a point: to whom, how, for when. */
export function SendNotice({
  stream,
  points,
  persons,
  utcOffset,
  clockKind,
}: {
  stream: string
  points: readonly PointChoice[]
  persons: readonly { id: string; label: string }[]
  utcOffset: string
  clockKind: 'real' | 'demo' | 'test'
}) {
  const { run, refusal, isBusy } = useAct()
  const [form, setForm] = useState({ point: '', to: '', party: 'client' as Party, how: '', day: '', clock: '' })
  const isReady = form.point !== '' && form.to !== '' && form.how.trim() !== '' && form.day !== '' && form.clock !== ''
  const send = () =>
    run(async () =>
      sendNoticeAction({
        stream,
        body: {
          point: form.point,
          to: form.to,
          party: form.party,
          how: form.how.trim(),
          sentAt: await readNow(utcOffset, clockKind),
          for: `${form.day}T${form.clock}:00${utcOffset}`,
        },
      }),
    )
  return (
    <section className="sheet">
      <h2>Give notice</h2>
      <div className="stack">
        <label className="field">
          <span className="label">Point</span>
          <select value={form.point} onChange={(event) => setForm({ ...form, point: event.target.value })}>
            <option value="">Choose</option>
            {points.map((one) => (
              <option key={one.no} value={one.no}>
                {one.no} {one.title}
              </option>
            ))}
          </select>
        </label>
        <label className="field">
          <span className="label">To</span>
          <select value={form.to} onChange={(event) => setForm({ ...form, to: event.target.value })}>
            <option value="">Choose</option>
            {persons.map((one) => (
              <option key={one.id} value={one.id}>
                {one.label}
              </option>
            ))}
          </select>
        </label>
        <fieldset className="field">
          <legend className="label">For the party</legend>
          <div className="choice">
            {(['client', 'engineer', 'inspector'] as const).map((party) => (
              <label key={party}>
                <input
                  type="radio"
                  name="notice-party"
                  checked={form.party === party}
                  onChange={() => setForm({ ...form, party })}
                />
                {party}
              </label>
            ))}
          </div>
        </fieldset>
        <label className="field">
          <span className="label">How</span>
          <input
            value={form.how}
            placeholder="telephone, letter"
            onChange={(event) => setForm({ ...form, how: event.target.value })}
          />
        </label>
        <div className="fields">
          <label className="field">
            <span className="label">For the day</span>
            <input type="date" value={form.day} onChange={(event) => setForm({ ...form, day: event.target.value })} />
          </label>
          <label className="field">
            <span className="label">At</span>
            <input
              type="time"
              value={form.clock}
              onChange={(event) => setForm({ ...form, clock: event.target.value })}
            />
          </label>
        </div>
        {refusal ? <RefusalNote refusal={refusal} /> : null}
        <button type="button" className="button" disabled={isBusy || !isReady} onClick={send}>
          Record the notice
        </button>
      </div>
    </section>
  )
}
