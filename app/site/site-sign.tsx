'use client'
import { useState } from 'react'
import { AskedSignatures } from '@/app/_parts/asked-signatures'
import { OutboxRefusal } from '@/app/_parts/outbox-refusal'
import { Choice, plainOptions } from '@/app/_ui/choice'
import { type SignerHere, signersHere } from '@/lib/capture/signing/signers-here'
import type { PointState } from '@/lib/domain/fold/repair-state'
import { MEANINGS, type Meaning, type Role } from '@/lib/domain/roles'
import { signaturesAsked } from '@/lib/domain/signing/signatures-asked'
import { maySign } from '@/lib/domain/signing/signing-roles'
import { AsSignedList } from './as-signed-list'
import { isSignerReady, NO_SIGNER, SignerHereFields } from './signer-here-fields'
import { type DecisionGroundHere, useSiteDecision } from './use-site-decision'

/** Signed in the act of release, or where the acceptance is given. */
const ELSEWHERE: ReadonlySet<Meaning> = new Set(['released', 'accepted'])

/** Sign what stands recorded at an attempt, on this device, with its key. Where nobody signs here it is shown only to say that a wrong PIN destroyed the last key. */
export function SiteSign({ ground, point }: { ground: DecisionGroundHere; point: PointState }) {
  const { site, pack, attempt, keys } = ground
  const { sign, refusal, isBusy } = useSiteDecision(ground)
  const [signer, setSigner] = useState(NO_SIGNER)
  const [meaning, setMeaning] = useState<Meaning | ''>('')
  const [signed, setSigned] = useState<string | null>(null)
  const signers = signersHere(pack, keys.keys)
  const chosen = signers.find((one) => one.person === signer.person)
  const meanings = meaningsOf(chosen, signer.role)
  const asked = signaturesAsked(point, attempt)
  const go = async () => {
    const { role } = signer
    if (meaning === '' || role === '') return
    if (await sign(signer, signers, { meaning, role })) {
      setSigned(`${chosen?.name ?? ''} signed: ${meaning}.`)
      setSigner(NO_SIGNER)
      setMeaning('')
    } else setSigner({ ...signer, pin: '' })
  }
  if (signers.length === 0 && !refusal) return null
  return (
    <section className="sheet">
      <h2>Sign</h2>
      <div className="stack">
        <AskedSignatures asked={asked} />
        <AsSignedList pack={pack} entries={site.entries} attempt={attempt} />
        <SignerHereFields
          signers={signers}
          me={pack.person}
          isBusy={isBusy}
          value={signer}
          change={(next) => {
            setSigner(next)
            setSigned(null)
            if (next.person !== signer.person || next.role !== signer.role) setMeaning('')
          }}
        >
          {meanings.length > 0 ? (
            <Choice legend="Meaning" options={plainOptions(meanings)} value={meaning} change={setMeaning} />
          ) : null}
        </SignerHereFields>
        {refusal ? <OutboxRefusal refusal={refusal} /> : null}
        {signed ? (
          <p className="note good" role="status">
            {signed}
          </p>
        ) : null}
        <button
          type="button"
          className="button"
          disabled={isBusy || meaning === '' || attempt.records.length === 0 || !isSignerReady(signer, signers)}
          onClick={() => void go()}
        >
          {isBusy ? 'Signing' : `Sign: ${meaning || 'choose a meaning'}`}
        </button>
      </div>
    </section>
  )
}

function meaningsOf(signer: SignerHere | undefined, role: Role | ''): Meaning[] {
  return signer && role !== ''
    ? MEANINGS.filter((one) => !ELSEWHERE.has(one) && maySign(role, one, signer.approves))
    : []
}
