'use client'
import { useState } from 'react'
import { v7 } from 'uuid'
import { acceptanceOf, NO_ACCEPTANCE } from '@/app/_parts/acceptance-draft'
import { AcceptanceFields } from '@/app/_parts/acceptance-fields'
import { OutboxRefusal } from '@/app/_parts/outbox-refusal'
import { acceptHere } from '@/lib/capture/signing/sign-on-device'
import { signersHere } from '@/lib/capture/signing/signers-here'
import type { SitePack } from '@/lib/domain/capture/site-pack'
import { concessionsOf } from '@/lib/domain/fold/concessions'
import { mayAccept } from '@/lib/domain/fold/may-accept'
import type { AttemptState, RepairState } from '@/lib/domain/fold/repair-state'
import { isSignerReady, NO_SIGNER, SignerHereFields } from './signer-here-fields'
import { useKeyRing } from './use-key-ring'
import type { Site } from './use-site'
import { useSiteDecision } from './use-site-decision'
import { WhyNot } from './why-not'

type Props = { site: Site; pack: SitePack; state: RepairState; attempt: AttemptState }

/** Accept a repair on this device, by the same form as in the record, signed with the inspector's key beside the closing records of `attempt`. What the fold says against it is told before it is signed. */
export function SiteAccept({ site, pack, state, attempt }: Props) {
  const keys = useKeyRing(pack.tenant)
  const { signWith, refusal, isBusy } = useSiteDecision({ site, pack, attempt, keys })
  const [draft, setDraft] = useState(NO_ACCEPTANCE)
  const [signer, setSigner] = useState(NO_SIGNER)
  const [wrong, setWrong] = useState<{ code: string } | null>(null)
  const signers = signersHere(pack, keys.keys)
  const chosen = signers.find((one) => one.person === signer.person)
  const concessions = concessionsOf(state)
  const acceptable =
    draft.kind !== '' && chosen
      ? mayAccept(state, draft.kind, concessions[0], {
          person: chosen.person,
          roles: chosen.roles,
          approve: chosen.approves,
        })
      : null
  const accept = async () => {
    // read before the PIN is asked: what cannot be read costs no try
    const said = acceptanceOf(draft, concessions)
    setWrong(said.ok ? null : said.error)
    if (!said.ok) return
    const isSigned = await signWith(signer, signers, ({ key, place, seen }) =>
      acceptHere(key, place, { id: v7(), signatureId: v7(), body: { ...said.value, heads: seen.heads } }),
    )
    if (!isSigned) setSigner({ ...signer, pin: '' })
  }
  const shown = wrong ?? refusal
  return (
    <section className="sheet">
      <h2>Accept</h2>
      {signers.length === 0 ? (
        <p className="note">Nobody signs on this device: make a key on it, with a network.</p>
      ) : (
        <div className="stack">
          <AcceptanceFields
            value={draft}
            change={setDraft}
            concessions={concessions}
            lifeFrom={state.specification?.body.lifeCountsFrom ?? 'acceptance'}
            persons={(pack.signers ?? []).map(({ person, name }) => ({ id: person, label: name }))}
          />
          <SignerHereFields
            signers={signers}
            me={pack.person}
            only={['inspector']}
            isBusy={isBusy}
            value={signer}
            change={setSigner}
          />
          {acceptable && !acceptable.ok ? (
            <WhyNot what="It may not be accepted now." barrier={acceptable.error} />
          ) : null}
          {shown ? <OutboxRefusal refusal={shown} /> : null}
          <p className="quiet small">
            An acceptance closes the record. Made without a network, it enters the record if nothing came there
            meanwhile that this device did not know; otherwise it stays here, and the inspector decides anew.
          </p>
          <button
            type="button"
            className="button"
            disabled={isBusy || !acceptable?.ok || !isSignerReady(signer, signers)}
            onClick={() => void accept()}
          >
            {isBusy ? 'Signing' : 'Accept and sign'}
          </button>
        </div>
      )}
    </section>
  )
}
