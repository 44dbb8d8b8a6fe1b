'use client'
import { useState } from 'react'
import { AcceptanceStands } from '@/app/_parts/acceptance-stands'
import { OutboxRefusal } from '@/app/_parts/outbox-refusal'
import { digestOnDevice } from '@/lib/capture/signing/sign-on-device'
import { signersHere } from '@/lib/capture/signing/signers-here'
import type { SiteState } from '@/lib/capture/site/site-state'
import type { SitePack } from '@/lib/domain/capture/site-pack'
import type { AcceptanceState, AttemptState } from '@/lib/domain/fold/repair-state'
import { rolesSigning } from '@/lib/domain/signing/signing-roles'
import { isSignerReady, NO_SIGNER, SignerHereFields } from './signer-here-fields'
import { useKeyRing } from './use-key-ring'
import type { Site } from './use-site'
import { useSiteDecision } from './use-site-decision'

type Props = { site: Site; pack: SitePack; folded: SiteState; acceptance: AcceptanceState; attempt: AttemptState }

/** An acceptance as it stands, for client and engineer to sign beside the inspector, on this device and in person too. */
export function SiteAcceptance({ site, pack, folded, acceptance, attempt }: Props) {
  return (
    <section className="sheet">
      <h2>Acceptance</h2>
      <div className="stack tight">
        <AcceptanceStands acceptance={acceptance} names={folded.names} unsent={folded.unsent} />
        <SignAcceptance site={site} pack={pack} acceptance={acceptance} attempt={attempt} />
      </div>
    </section>
  )
}

function SignAcceptance({ site, pack, acceptance: { fact }, attempt }: Omit<Props, 'folded'>) {
  const keys = useKeyRing(pack.tenant)
  const { sign, refusal, isBusy } = useSiteDecision({ site, pack, attempt, keys })
  const [signer, setSigner] = useState(NO_SIGNER)
  const signers = signersHere(pack, keys.keys)
  const go = async () => {
    const { role } = signer
    if (role === '') return
    const covers = [{ fact: fact.id, sha256: pack.digests[fact.id] ?? digestOnDevice(fact) }]
    const isSigned = await sign(signer, signers, { meaning: 'accepted', role }, covers)
    setSigner(isSigned ? NO_SIGNER : { ...signer, pin: '' })
  }
  if (signers.length === 0 && !refusal) return null
  return (
    <details>
      <summary className="fold-head">Sign this acceptance</summary>
      <div className="stack">
        <SignerHereFields
          signers={signers}
          me={pack.person}
          only={rolesSigning('accepted')}
          isBusy={isBusy}
          value={signer}
          change={setSigner}
        />
        {refusal ? <OutboxRefusal refusal={refusal} /> : null}
        <button
          type="button"
          className="button"
          disabled={isBusy || !isSignerReady(signer, signers)}
          onClick={() => void go()}
        >
          {isBusy ? 'Signing' : 'Sign: accepted'}
        </button>
      </div>
    </details>
  )
}
