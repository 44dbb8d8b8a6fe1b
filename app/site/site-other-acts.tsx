'use client'
import { useState } from 'react'
import { AttemptFields } from '@/app/_parts/attempt-fields'
import { OutboxRefusal } from '@/app/_parts/outbox-refusal'
import { ReasonField } from '@/app/_parts/reason-field'
import { WithdrawFields } from '@/app/_parts/withdraw-fields'
import type { DecidingActor } from '@/lib/domain/fold/decision'
import { mayWithdraw } from '@/lib/domain/fold/may-release'
import { mayMarkNotApplicable, mayOpenAttempt } from '@/lib/domain/fold/may-submit'
import { nextAttemptGround } from '@/lib/domain/fold/next-attempt-ground'
import type { PointState, RepairState } from '@/lib/domain/fold/repair-state'
import { mayAct } from '@/lib/domain/permissions'
import { showMoment } from '@/lib/domain/time'
import { type DecisionGroundHere, useSiteDecision } from './use-site-decision'
import { WhyNot } from './why-not'

type Props = { ground: DecisionGroundHere; state: RepairState; point: PointState; actor: DecidingActor }

/** Withdraw a release, open the next attempt, mark a point not applicable: each folded until it is wanted, and offered to who may. */
export function SiteOtherActs(props: Props) {
  const { actor, point, ground, state } = props
  const isBlank = point.current.records.length === 0 && point.current.notApplicable === null
  return (
    <>
      <Withdraw {...props} />
      {!state.acceptance && mayAct('open-attempt', actor.roles) === 'may' ? (
        <NextAttempt key={ground.attempt.attempt} {...props} />
      ) : null}
      {isBlank && mayAct('mark-not-applicable', actor.roles) === 'may' ? <NotApplicable {...props} /> : null}
    </>
  )
}

function Withdraw({ ground, state, actor }: Props) {
  const { decide, refusal, isBusy } = useSiteDecision(ground)
  const able = ground.attempt.releases.filter(
    (one) => ['valid', 'used', 'in question'].includes(one.state) && mayWithdraw(state, one.fact.id, actor).ok,
  )
  return (
    <WithdrawFields
      releases={able.map(({ fact }) => ({
        id: fact.id,
        label: `${fact.body.party}, ${showMoment(fact.observedAt)}`,
      }))}
      isBusy={isBusy}
      withdraw={(body) => void decide('withdraw-release', () => body)}
    >
      {refusal ? <OutboxRefusal refusal={refusal} /> : null}
    </WithdrawFields>
  )
}

function NextAttempt({ ground, state, point }: Props) {
  const { decide, refusal, isBusy } = useSiteDecision(ground)
  const next = nextAttemptGround(state, point, ground.attempt.attempt)
  return (
    <AttemptFields
      ground={next}
      isBusy={isBusy}
      open={(body) => void decide('open-attempt', () => body)}
      barred={(points) => {
        const openable = mayOpenAttempt(state, points, next.attempt)
        return openable.ok ? null : <WhyNot what="It cannot be opened." barrier={openable.error} />
      }}
    >
      {refusal ? <OutboxRefusal refusal={refusal} /> : null}
    </AttemptFields>
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
          <ReasonField label="Why this point does not apply" value={reason} change={setReason} />
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
