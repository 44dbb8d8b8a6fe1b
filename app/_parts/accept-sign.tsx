'use client'
import { useState } from 'react'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { signFactsAction } from '@/app/(work)/actions/point-actions'
import { rolesSigning } from '@/lib/domain/signing/signing-roles'
import { useAct } from './act-note'
import { type SignerChoice, SignerFields, type SignerState, signerReady, signerValue } from './signer-fields'

/** Client and engineer sign the acceptance beside the inspector. */
export function AcceptSign({
  stream,
  point,
  attempt,
  acceptance,
  signers,
  me,
}: {
  stream: string
  point: string
  attempt: number
  acceptance: string
  signers: readonly SignerChoice[]
  me: string
}) {
  const { run, refusal, isBusy } = useAct()
  const [signer, setSigner] = useState<SignerState>({ person: '', role: '', password: '' })
  const signed = signerValue(signer, signers)
  return (
    <details>
      <summary className="fold-head">Sign this acceptance</summary>
      <div className="stack">
        <SignerFields signers={signers} me={me} value={signer} change={setSigner} only={rolesSigning('accepted')} />
        {refusal ? <RefusalNote refusal={refusal} /> : null}
        <button
          type="button"
          className="button"
          disabled={isBusy || !signed || !signerReady(signer)}
          onClick={() =>
            run(() =>
              signFactsAction({
                stream,
                point,
                attempt,
                meaning: 'accepted',
                role: signer.role,
                covers: [acceptance],
                signer: signed,
              }),
            )
          }
        >
          Sign: accepted
        </button>
      </div>
    </details>
  )
}
