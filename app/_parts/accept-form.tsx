'use client'
import { useState } from 'react'
import { RefusalNote, type ShownRefusal } from '@/app/_ui/refusal-note'
import { acceptRepairAction } from '@/app/(work)/actions/repair-actions'
import { acceptanceOf, NO_ACCEPTANCE } from './acceptance-draft'
import { AcceptanceFields } from './acceptance-fields'
import { useAct } from './act-note'
import { type SignerChoice, SignerFields, type SignerState, signerReady, signerValue } from './signer-fields'

type Props = {
  stream: string
  heads: readonly { stream: string; length: number }[]
  signers: readonly SignerChoice[]
  me: string
  concessions: readonly string[]
  lifeFrom: string
  persons: readonly { id: string; label: string }[]
}

/** Accept a repair, signed by the inspector. */
export function AcceptForm({ stream, heads, signers, me, concessions, lifeFrom, persons }: Props) {
  const { run, refusal, isBusy } = useAct()
  const [draft, setDraft] = useState(NO_ACCEPTANCE)
  const [signer, setSigner] = useState<SignerState>({ person: '', role: '', password: '' })
  const [wrong, setWrong] = useState<ShownRefusal | null>(null)
  const signed = signerValue(signer, signers)
  const accept = async () => {
    const said = acceptanceOf(draft, concessions)
    setWrong(said.ok ? null : said.error)
    if (said.ok) await run(() => acceptRepairAction({ stream, signer: signed, body: { ...said.value, heads } }))
  }
  const shown = wrong ?? refusal
  return (
    <section className="sheet">
      <h2>Accept</h2>
      <div className="stack">
        <AcceptanceFields
          value={draft}
          change={setDraft}
          concessions={concessions}
          lifeFrom={lifeFrom}
          persons={persons}
        />
        <SignerFields signers={signers} me={me} value={signer} change={setSigner} only={['inspector']} />
        {shown ? <RefusalNote refusal={shown} /> : null}
        <button
          type="button"
          className="button"
          disabled={isBusy || draft.kind === '' || !signed || !signerReady(signer)}
          onClick={accept}
        >
          Accept and sign
        </button>
      </div>
    </section>
  )
}
