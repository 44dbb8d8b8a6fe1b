'use client'
import { useState } from 'react'
import { Choice, plainOptions } from '@/app/_ui/choice'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { signFactsAction } from '@/app/(work)/actions/point-actions'
import type { Meaning, Role } from '@/lib/domain/roles'
import { useAct } from './act-note'
import { AskedSignatures } from './asked-signatures'
import { type SignerChoice, SignerFields, type SignerState, signerValue } from './signer-fields'

const MEANINGS: readonly Meaning[] = ['performed', 'measured', 'checked', 'witnessed', 'reviewed', 'approved']

export type SignPanelProps = {
  stream: string
  point: string
  attempt: number
  covers: readonly string[]
  signers: readonly SignerChoice[]
  me: string
  asked: readonly { meaning: Meaning; role: Role }[]
}

/** Sign what stands recorded here: who signs is chosen each time, the password asked each time, the meaning named. */
export function SignPanel({ stream, point, attempt, covers, signers, me, asked }: SignPanelProps) {
  const { run, refusal, isBusy } = useAct()
  const [meaning, setMeaning] = useState<Meaning | ''>('')
  const [signer, setSigner] = useState<SignerState>({ person: '', role: '', password: '' })
  const sign = async () => {
    const value = signerValue(signer, signers)
    if (!value || meaning === '') return
    const isSigned = await run(() =>
      signFactsAction({ stream, point, attempt, meaning, role: signer.role, covers: [...covers], signer: value }),
    )
    if (isSigned) setSigner({ person: '', role: '', password: '' })
  }
  return (
    <details className="sheet" open={asked.length > 0}>
      <summary className="fold-head">
        <h2>Sign</h2>
      </summary>
      <div className="stack">
        <AskedSignatures asked={asked} />
        <Choice legend="Meaning" options={plainOptions(MEANINGS)} value={meaning} change={setMeaning} />
        <SignerFields signers={signers} me={me} value={signer} change={setSigner} />
        <p className="quiet small">
          This signature covers {covers.length} {covers.length === 1 ? 'entry' : 'entries'} exactly as they stand now.
        </p>
        {refusal ? <RefusalNote refusal={refusal} /> : null}
        <button
          type="button"
          className="button"
          disabled={isBusy || meaning === '' || covers.length === 0 || !signerValue(signer, signers)}
          onClick={sign}
        >
          Sign: {meaning || 'choose a meaning'}
        </button>
      </div>
    </details>
  )
}
