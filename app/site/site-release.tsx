'use client'
import { useState } from 'react'
import { v7 } from 'uuid'
import { OutboxRefusal } from '@/app/_parts/outbox-refusal'
import { ReasonField } from '@/app/_parts/reason-field'
import { ScopeFields, type ScopeState, scopeValue } from '@/app/_parts/scope-fields'
import { Choice, plainOptions } from '@/app/_ui/choice'
import { releaseHere } from '@/lib/capture/signing/sign-on-device'
import { signersHere } from '@/lib/capture/signing/signers-here'
import { ROLE_OF_PARTY } from '@/lib/domain/fold/decision'
import { mayRelease } from '@/lib/domain/fold/may-release'
import { maySubmit } from '@/lib/domain/fold/may-submit'
import type { PointState, RepairState } from '@/lib/domain/fold/repair-state'
import type { Party } from '@/lib/domain/roles'
import { isSignerReady, NO_SIGNER, SignerHereFields } from './signer-here-fields'
import { type DecisionGroundHere, useSiteDecision } from './use-site-decision'
import { WhyNot } from './why-not'

type Props = { ground: DecisionGroundHere; state: RepairState; point: PointState; mayRecord: boolean }

/** Submit an attempt, then release it with its scope or refuse it with the reason, on this device. What the fold says against it stands in the place of the button. */
export function SiteRelease({ ground, state, point, mayRecord }: Props) {
  const { attempt } = ground
  const { decide, refusal, isBusy } = useSiteDecision(ground)
  const at = { point: point.no, attempt: attempt.attempt }
  const submittable = maySubmit(state, point.no, attempt.attempt)
  if (attempt.isSubmitted)
    return point.awaiting.length > 0 ? <Decision ground={ground} state={state} point={point} /> : null
  if (attempt.notApplicable || !mayRecord) return null
  return (
    <section className="sheet">
      <h2>{point.awaiting.length > 0 ? `Hold for ${point.awaiting.join(', ')}` : 'Submit'}</h2>
      <div className="stack">
        {submittable.ok ? (
          <button
            type="button"
            className="button"
            disabled={isBusy}
            onClick={() => void decide('submit-point', (seen) => ({ ...at, heads: seen.heads }))}
          >
            Submit for release
          </button>
        ) : (
          <WhyNot what="Not to be submitted yet." barrier={submittable.error} />
        )}
        {refusal ? <OutboxRefusal refusal={refusal} /> : null}
        {point.awaiting.length > 0 ? (
          <p className="quiet small">A release is decided once the point is submitted.</p>
        ) : null}
      </div>
    </section>
  )
}

function Decision({ ground, state, point }: Omit<Props, 'mayRecord'>) {
  const { site, pack, attempt, keys } = ground
  const { decide, signWith, refusal, isBusy } = useSiteDecision(ground)
  const [asked, setAsked] = useState<Party | ''>('')
  const [signer, setSigner] = useState(NO_SIGNER)
  const [scope, setScope] = useState<ScopeState>({ kind: 'whole', text: '' })
  const [remark, setRemark] = useState('')
  const party =
    point.awaiting.find((one) => one === asked) ?? (point.awaiting.length === 1 ? point.awaiting[0] : undefined)
  const signers = signersHere(pack, keys.keys)
  const chosen = signers.find((one) => one.person === signer.person)
  const part = scopeValue(scope)
  const at = { point: point.no, attempt: attempt.attempt }
  const releasable =
    party && chosen && part
      ? mayRelease({
          state,
          ...at,
          party,
          scope: part,
          actor: { person: chosen.person, roles: chosen.roles, approve: chosen.approves },
          now: state.asOf,
        })
      : null
  const clear = (isDone: boolean) => {
    if (!isDone) return setSigner({ ...signer, pin: '' })
    setSigner(NO_SIGNER)
    setRemark('')
    setAsked('')
  }
  const release = async () => {
    if (!party || !part) return
    clear(
      await signWith(signer, signers, ({ key, signer: by, place, seen }) =>
        releaseHere(key, by, place, { id: v7(), signatureId: v7(), party, scope: part, heads: seen.heads, remark }),
      ),
    )
  }
  return (
    <section className="sheet">
      <h2>Hold for {point.awaiting.join(', ')}</h2>
      <div className="stack">
        {point.awaiting.length > 1 ? (
          <Choice
            legend="Release for"
            options={plainOptions(point.awaiting)}
            value={asked}
            change={(one) => {
              setAsked(one)
              setSigner(NO_SIGNER)
            }}
          />
        ) : null}
        <ScopeFields value={scope} change={setScope} />
        {party ? (
          <SignerHereFields
            signers={signers}
            me={pack.person}
            isBusy={isBusy}
            value={signer}
            change={setSigner}
            only={[ROLE_OF_PARTY[party]]}
          />
        ) : null}
        <ReasonField label="Remark, or the reason of a refusal" value={remark} change={setRemark} />
        {releasable && !releasable.ok ? (
          <WhyNot what={`${chosen?.name ?? ''} may not release it now.`} barrier={releasable.error} />
        ) : null}
        {refusal ? <OutboxRefusal refusal={refusal} /> : null}
        <p className="quiet small">
          A release made without a network is kept as given. Where the record held something that this device did not
          know, it comes in question until an inspector rules.
        </p>
        <div className="row">
          <button
            type="button"
            className="button"
            disabled={isBusy || !releasable?.ok || !isSignerReady(signer, signers)}
            onClick={() => void release()}
          >
            {isBusy ? 'Releasing' : 'Release to the plan'}
          </button>
          {party && pack.roles.includes(ROLE_OF_PARTY[party]) ? (
            <button
              type="button"
              className="button stop"
              disabled={isBusy || remark.trim().length < 3}
              onClick={async () =>
                clear(
                  await decide('refuse-release', (seen) => ({
                    ...at,
                    party,
                    reason: remark.trim(),
                    heads: seen.heads,
                  })),
                )
              }
            >
              Refuse the release as {site.owner.name}
            </button>
          ) : null}
        </div>
      </div>
    </section>
  )
}
