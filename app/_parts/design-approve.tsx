'use client'
import { useState } from 'react'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { signFactsAction } from '@/app/(work)/actions/point-actions'
import { useAct } from './act-note'
import { type SignerChoice, SignerFields, type SignerState, signerReady, signerValue } from './signer-fields'

/** The engineer's approval of a revision: a signature over the design record, its corrections and the defect it was made for. */
export function DesignApprove({
  stream,
  point,
  attempt,
  covers,
  label,
  signers,
  me,
}: {
  stream: string
  point: string
  attempt: number
  covers: readonly string[]
  label: string
  signers: readonly SignerChoice[]
  me: string
}) {
  const { run, refusal, isBusy } = useAct()
  const [signer, setSigner] = useState<SignerState>({ person: '', role: '', password: '' })
  const approve = async () => {
    const value = signerValue(signer, signers)
    if (!value) return
    const isSigned = await run(() =>
      signFactsAction({
        stream,
        point,
        attempt,
        meaning: 'approved',
        role: signer.role,
        covers: [...covers],
        signer: value,
      }),
    )
    if (isSigned) setSigner({ person: '', role: '', password: '' })
  }
  return (
    <div className="stack no-print">
      <SignerFields signers={signers} me={me} value={signer} change={setSigner} only={['engineer']} />
      {refusal ? <RefusalNote refusal={refusal} /> : null}
      <button type="button" className="button" disabled={isBusy || !signerReady(signer)} onClick={approve}>
        Approve {label}
      </button>
    </div>
  )
}
