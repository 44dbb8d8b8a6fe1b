'use client'
import { useState } from 'react'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { refuseReleaseAction, releasePointAction, submitPointAction } from '@/app/(work)/actions/point-actions'
import type { VerdictKind } from '@/lib/domain/judge/verdict'
import type { Party, Role } from '@/lib/domain/roles'
import { useAct } from './act-note'
import { ScopeFields, type ScopeState, scopeValue } from './scope-fields'
import { type SignerChoice, SignerFields, type SignerState, signerReady, signerValue } from './signer-fields'

const ROLE_OF: Record<Party, Role> = { crew: 'lead', inspector: 'inspector', client: 'client', engineer: 'engineer' }

type Props = {
  stream: string
  point: string
  attempt: number
  heads: readonly { stream: string; length: number }[]
  signers: readonly SignerChoice[]
  me: string
  isSubmitted: boolean
  verdict: VerdictKind
  awaiting: readonly Party[]
  maySubmit: boolean
  mayDecide: boolean
}

/** Submit, then release or refuse for a party that holds the point. The release is signed in the same act and names its scope. */
export function ReleasePanel({
  stream,
  point,
  attempt,
  heads,
  signers,
  me,
  isSubmitted,
  verdict,
  awaiting,
  maySubmit,
  mayDecide,
}: Props) {
  const { run, refusal, isBusy } = useAct()
  const [party, setParty] = useState<Party | ''>('')
  const [signer, setSigner] = useState<SignerState>({ person: '', role: '', password: '' })
  const [scope, setScope] = useState<ScopeState>({ kind: 'whole', text: '' })
  const [remark, setRemark] = useState('')
  const chosen = awaiting.find((one) => one === party) ?? (awaiting.length === 1 ? awaiting[0] : undefined)
  const signed = signerValue(signer, signers)
  const part = scopeValue(scope)
  const seen = { heads: [...heads] }
  const clear = (isDone: boolean) => {
    if (isDone) {
      setSigner({ person: '', role: '', password: '' })
      setRemark('')
    }
  }
  if (awaiting.length === 0 && isSubmitted) return null
  return (
    <section className="sheet">
      <h2>{awaiting.length > 0 ? `Hold for ${awaiting.join(', ')}` : 'Submit'}</h2>
      <div className="stack">
        {maySubmit && !isSubmitted ? (
          <button
            type="button"
            className="button"
            disabled={isBusy}
            onClick={() => run(() => submitPointAction({ stream, body: { point, attempt, ...seen } }))}
          >
            Submit for release
          </button>
        ) : null}
        {mayDecide && isSubmitted && awaiting.length > 0 ? (
          <>
            {awaiting.length > 1 ? (
              <div className="choice" role="radiogroup" aria-label="Release for">
                {awaiting.map((one) => (
                  <label key={one}>
                    <input
                      type="radio"
                      name={`party-${point}`}
                      checked={party === one}
                      onChange={() => setParty(one)}
                    />
                    {one}
                  </label>
                ))}
              </div>
            ) : null}
            <ScopeFields value={scope} change={setScope} />
            {chosen ? (
              <SignerFields signers={signers} me={me} value={signer} change={setSigner} only={[ROLE_OF[chosen]]} />
            ) : null}
            <label className="field">
              <span className="label">Remark, or the reason of a refusal</span>
              <textarea value={remark} onChange={(event) => setRemark(event.target.value)} />
            </label>
            {verdict === 'pass' ? null : (
              <p className="note warn">The verdict is {verdict}: a release to the plan needs pass, or a concession.</p>
            )}
            {refusal ? <RefusalNote refusal={refusal} /> : null}
            <div className="row">
              <button
                type="button"
                className="button"
                disabled={isBusy || !chosen || !signed || !part || !signerReady(signer)}
                onClick={async () =>
                  clear(
                    await run(() =>
                      releasePointAction({
                        stream,
                        body: {
                          point,
                          attempt,
                          party: chosen,
                          scope: part,
                          ...(remark.trim() ? { remark: remark.trim() } : {}),
                          ...seen,
                        },
                        signer: signed,
                      }),
                    ),
                  )
                }
              >
                Release to the plan
              </button>
              <button
                type="button"
                className="button stop"
                disabled={isBusy || !chosen || remark.trim().length < 3}
                onClick={async () =>
                  clear(
                    await run(() =>
                      refuseReleaseAction({
                        stream,
                        body: { point, attempt, party: chosen, reason: remark.trim(), ...seen },
                      }),
                    ),
                  )
                }
              >
                Refuse the release
              </button>
            </div>
          </>
        ) : refusal ? (
          <RefusalNote refusal={refusal} />
        ) : null}
        {!isSubmitted && awaiting.length > 0 ? (
          <p className="quiet small">A release is decided once the point is submitted.</p>
        ) : null}
      </div>
    </section>
  )
}
