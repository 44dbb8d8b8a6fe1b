'use client'
import { useState } from 'react'
import { OutboxRefusal } from '@/app/_parts/outbox-refusal'
import type { DecidingActor } from '@/lib/domain/fold/decision'
import { mayWithdraw } from '@/lib/domain/fold/may-release'
import { mayMarkNotApplicable, mayOpenAttempt } from '@/lib/domain/fold/may-submit'
import type { PointState, RepairState } from '@/lib/domain/fold/repair-state'
import { showMoment } from '@/lib/domain/time'
import { type DecisionGroundHere, useSiteDecision } from './use-site-decision'
import { WhyNot } from './why-not'

type Props = { ground: DecisionGroundHere; state: RepairState; point: PointState; actor: DecidingActor }

/** Withdraw a release, open the next attempt, mark a point not applicable: each folded until it is wanted, and offered to who may. */
export function SiteOtherActs(props: Props) {
  const { actor, point, ground } = props
  const isDecider = actor.roles.some((role) => role === 'inspector' || role === 'lead')
  return (
    <>
      <Withdraw {...props} />
      {isDecider ? <NextAttempt key={ground.attempt.attempt} {...props} /> : null}
      {point.current.records.length === 0 &&
      point.current.notApplicable === null &&
      actor.roles.some((role) => role === 'inspector' || role === 'engineer') ? (
        <NotApplicable {...props} />
      ) : null}
    </>
  )
}

function Withdraw({ ground, state, actor }: Props) {
  const { decide, refusal, isBusy } = useSiteDecision(ground)
  const [asked, setAsked] = useState('')
  const [cause, setCause] = useState('')
  const [reason, setReason] = useState('')
  const able = ground.attempt.releases.filter(
    (one) => ['valid', 'used', 'in question'].includes(one.state) && mayWithdraw(state, one.fact.id, actor).ok,
  )
  const release = able.find((one) => one.fact.id === asked) ?? able[0]
  if (!release) return null
  return (
    <details className="sheet">
      <summary className="fold-head">Withdraw a release</summary>
      <div className="stack">
        <label className="field">
          <span className="label">Release</span>
          <select value={release.fact.id} onChange={(event) => setAsked(event.target.value)}>
            {able.map(({ fact }) => (
              <option key={fact.id} value={fact.id}>
                {fact.body.party}, {showMoment(fact.observedAt)}
              </option>
            ))}
          </select>
        </label>
        <label className="field">
          <span className="label">Cause</span>
          <input value={cause} onChange={(event) => setCause(event.target.value)} />
        </label>
        <Reason label="Reason" value={reason} change={setReason} />
        {refusal ? <OutboxRefusal refusal={refusal} /> : null}
        <button
          type="button"
          className="button stop"
          disabled={isBusy || cause.trim() === '' || reason.trim().length < 3}
          onClick={() =>
            void decide('withdraw-release', () => ({
              release: release.fact.id,
              cause: cause.trim(),
              reason: reason.trim(),
            }))
          }
        >
          Withdraw
        </button>
      </div>
    </details>
  )
}

function NextAttempt({ ground, state, point }: Props) {
  const { decide, refusal, isBusy } = useSiteDecision(ground)
  const [also, setAlso] = useState<readonly string[]>([])
  const [reason, setReason] = useState('')
  const [cause, setCause] = useState('')
  const attempt = ground.attempt.attempt + 1
  const points = [point.no, ...also].sort()
  const openable = mayOpenAttempt(state, points, attempt)
  const others = state.points.filter(
    (one) => one.no > point.no && one.current.records.length > 0 && one.current.attempt === attempt - 1,
  )
  const open = state.nonconformances.filter((one) => one.isOpen)
  if (state.acceptance) return null
  return (
    <details className="sheet">
      <summary className="fold-head">Open attempt {attempt}</summary>
      <div className="stack">
        <p className="quiet">
          Attempt {attempt - 1} stays as it is, beside the new one. A re-test covers the full grid.
        </p>
        {others.length > 0 ? (
          <fieldset className="field">
            <legend className="label">Points to do again with it</legend>
            <div className="choice">
              {others.map((one) => (
                <label key={one.no}>
                  <input
                    type="checkbox"
                    checked={also.includes(one.no)}
                    onChange={(event) =>
                      setAlso(event.target.checked ? [...also, one.no] : also.filter((no) => no !== one.no))
                    }
                  />
                  {one.no} {one.plan.title}
                </label>
              ))}
            </div>
          </fieldset>
        ) : null}
        {open.length > 0 ? (
          <label className="field">
            <span className="label">From nonconformance</span>
            <select value={cause} onChange={(event) => setCause(event.target.value)}>
              <option value="">None</option>
              {open.map((one) => (
                <option key={one.stream} value={one.stream}>
                  {one.number}
                </option>
              ))}
            </select>
          </label>
        ) : null}
        <Reason label="Reason of the new attempt" value={reason} change={setReason} />
        {openable.ok ? null : <WhyNot what="It cannot be opened." barrier={openable.error} />}
        {refusal ? <OutboxRefusal refusal={refusal} /> : null}
        <button
          type="button"
          className="button"
          disabled={isBusy || !openable.ok || reason.trim().length < 3}
          onClick={() =>
            void decide('open-attempt', () => ({
              points,
              attempt,
              reason: reason.trim(),
              ...(cause ? { nonconformance: cause } : {}),
            }))
          }
        >
          Open attempt {attempt}
        </button>
      </div>
    </details>
  )
}

function NotApplicable({ ground, state, point, actor }: Props) {
  const { decide, refusal, isBusy } = useSiteDecision(ground)
  const [reason, setReason] = useState('')
  const { attempt } = ground.attempt
  const markable = mayMarkNotApplicable(state, point.no, attempt, actor)
  return (
    <details className="sheet">
      <summary className="fold-head">Mark it not applicable</summary>
      <div className="stack">
        {markable.ok ? (
          <Reason label="Why this point does not apply" value={reason} change={setReason} />
        ) : (
          <WhyNot what="It cannot be marked so now." barrier={markable.error} />
        )}
        {refusal ? <OutboxRefusal refusal={refusal} /> : null}
        <button
          type="button"
          className="button"
          disabled={isBusy || !markable.ok || reason.trim().length < 3}
          onClick={() =>
            void decide('mark-not-applicable', () => ({ point: point.no, attempt, reason: reason.trim() }))
          }
        >
          Not applicable
        </button>
      </div>
    </details>
  )
}

function Reason({ label, value, change }: { label: string; value: string; change: (next: string) => void }) {
  return (
    <label className="field">
      <span className="label">{label}</span>
      <textarea value={value} onChange={(event) => change(event.target.value)} />
    </label>
  )
}
