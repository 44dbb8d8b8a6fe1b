'use client'
import { useState } from 'react'
import { readNow } from '@/app/_capture/read-now'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { answerNoticeAction, sendNoticeAction, waiveHoldAction } from '@/app/(work)/actions/repair-actions'
import { parseDecimal } from '@/lib/domain/decimal'
import type { Party } from '@/lib/domain/roles'
import { useAct } from './act-note'

type PointChoice = { no: string; title: string; attempt?: number }

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

const OUTCOMES = ['attended', 'not attended, proceeded', 'postponed'] as const

/** What came of a notice. Silence never waives a hold; at a witness point the work may go on after the wait. */
export function AnswerNotice({ stream, notice }: { stream: string; notice: string }) {
  const { run, refusal, isBusy } = useAct()
  const [waited, setWaited] = useState('')
  const [clause, setClause] = useState('')
  const minutes = waited === '' ? null : parseDecimal(waited)
  return (
    <div className="stack tight">
      <div className="fields">
        <label className="field">
          <span className="label">Minutes waited</span>
          <input inputMode="decimal" value={waited} onChange={(event) => setWaited(event.target.value)} />
        </label>
        <label className="field">
          <span className="label">Clause</span>
          <input value={clause} onChange={(event) => setClause(event.target.value)} />
        </label>
      </div>
      <div className="row">
        {OUTCOMES.map((outcome) => (
          <button
            key={outcome}
            type="button"
            className="button plain"
            disabled={isBusy || (outcome === 'not attended, proceeded' && minutes === null)}
            onClick={() =>
              run(() =>
                answerNoticeAction({
                  stream,
                  body: {
                    notice,
                    outcome,
                    ...(minutes ? { waitedMinutes: minutes } : {}),
                    ...(clause.trim() ? { clause: clause.trim() } : {}),
                  },
                }),
              )
            }
          >
            {outcome}
          </button>
        ))}
      </div>
      {refusal ? <RefusalNote refusal={refusal} /> : null}
    </div>
  )
}

/** A named person gives up a hold for one point, in writing, before the step. */
export function WaiveHold({
  stream,
  party,
  by,
  points,
}: {
  stream: string
  party: 'client' | 'engineer'
  by: string
  points: readonly PointChoice[]
}) {
  const { run, refusal, isBusy } = useAct()
  const [point, setPoint] = useState('')
  const [writing, setWriting] = useState('')
  const chosen = points.find((one) => one.no === point)
  if (points.length === 0) return null
  return (
    <section className="sheet">
      <h2>Waive a hold, in writing</h2>
      <div className="stack">
        <label className="field">
          <span className="label">Point</span>
          <select value={point} onChange={(event) => setPoint(event.target.value)}>
            <option value="">Choose</option>
            {points.map((one) => (
              <option key={one.no} value={one.no}>
                {one.no} {one.title}
              </option>
            ))}
          </select>
        </label>
        <label className="field">
          <span className="label">The writing: letter or message, with its date</span>
          <input value={writing} onChange={(event) => setWriting(event.target.value)} />
        </label>
        {refusal ? <RefusalNote refusal={refusal} /> : null}
        <button
          type="button"
          className="button"
          disabled={isBusy || !chosen || writing.trim() === ''}
          onClick={() =>
            run(() =>
              waiveHoldAction({
                stream,
                body: { point, attempt: chosen?.attempt ?? 1, party, by, writing: writing.trim() },
              }),
            )
          }
        >
          Waive this hold
        </button>
      </div>
    </section>
  )
}
