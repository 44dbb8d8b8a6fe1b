'use client'
import { useState } from 'react'
import { v7 } from 'uuid'
import type { Captured, CaptureRefusal } from '@/lib/capture/outbox/outbox-terms'
import { type AttemptAsSigned, attemptAsSigned } from '@/lib/capture/signing/attempt-as-signed'
import type { KeptKey, KeyRefusal } from '@/lib/capture/signing/key-ring'
import { type DeviceSigner, type SigningPlace, signHere } from '@/lib/capture/signing/sign-on-device'
import type { SignerHere } from '@/lib/capture/signing/signers-here'
import type { SitePack } from '@/lib/domain/capture/site-pack'
import type { AttemptState } from '@/lib/domain/fold/repair-state'
import { done, type Result } from '@/lib/domain/result'
import type { Meaning, Role } from '@/lib/domain/roles'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { hexDigestOf } from '@/lib/evidence/digest'
import type { SignerHereState } from './signer-here-fields'
import type { KeysHere } from './use-key-ring'
import type { Site } from './use-site'

export type DecisionGroundHere = { site: Site; pack: SitePack; attempt: AttemptState; keys: KeysHere }
export type HereRefusal = KeyRefusal | CaptureRefusal
/** A key that its PIN opened, who signs with it, and what is signed. */
export type Opened = { key: KeptKey; signer: DeviceSigner; place: SigningPlace; seen: AttemptAsSigned }

/** Decide and sign at an attempt on this device: what is made goes into the outbox, under the time at which it was made. One act at a time. */
export function useSiteDecision({ site, pack, attempt, keys }: DecisionGroundHere) {
  const [refusal, setRefusal] = useState<HereRefusal | null>(null)
  const [isBusy, setBusy] = useState(false)
  const { page } = site

  const seenNow = async () => {
    const device = await page.device()
    const here = { nowMs: page.nowMs(), device: device.id }
    // signed is what the screen showed; what this device keeps beyond that is known to it all the same
    const { covers, photos } = attemptAsSigned(pack, site.entries, attempt, here)
    return { device, seen: { ...attemptAsSigned(pack, await page.outbox.entries(), attempt, here), covers, photos } }
  }

  async function run(act: () => Promise<Result<unknown, HereRefusal>>): Promise<boolean> {
    setBusy(true)
    setRefusal(null)
    try {
      const outcome = await act()
      if (!outcome.ok) setRefusal(outcome.error)
      return outcome.ok
    } finally {
      setBusy(false)
    }
  }

  /** A decision without a signature: submit, refuse, withdraw, open an attempt, mark not applicable. */
  const decide = (command: Captured['command'], bodyOf: (seen: AttemptAsSigned) => Record<string, unknown>) =>
    run(async () => {
      const { device, seen } = await seenNow()
      return page.capture({
        command,
        device,
        input: { stream: pack.stream, body: bodyOf(seen), observedAt: seen.at, enteredAt: seen.at },
      })
    })

  /** Open the key with its PIN, make the statement, keep it. A wrong PIN makes nothing. */
  const signWith = (
    state: SignerHereState,
    signers: readonly SignerHere[],
    make: (opened: Opened) => Promise<Captured & { id: string }>,
  ) =>
    run(async () => {
      const chosen = signers.find((one) => one.person === state.person)
      if (typeof keys.ring !== 'object' || !chosen) return { ok: false, error: { code: 'key-not-here' } }
      const unlocked = await keys.ring.unlock(
        pack.tenant,
        chosen.by === 'key' ? chosen.person : state.witness,
        state.pin,
      )
      await keys.refresh()
      if (!unlocked.ok) return unlocked
      const { device, seen } = await seenNow()
      const { drawing } = state
      const signer: DeviceSigner =
        chosen.by === 'key'
          ? { by: 'key' }
          : {
              by: 'in person',
              person: chosen.person,
              name: chosen.name,
              drawing: drawing && hexDigestOf(canonicalBytes(drawing)),
            }
      const place: SigningPlace = {
        stream: pack.stream,
        point: attempt.point,
        attempt: attempt.attempt,
        covers: seen.covers,
        photos: seen.photos,
        at: seen.at,
        device,
        isOffline: !navigator.onLine || site.status.last?.kind === 'no-network',
      }
      const statement = await make({ key: unlocked.value, signer, place, seen })
      const input = chosen.by === 'in person' && drawing ? { ...statement.input, drawing } : statement.input
      const kept = await page.capture({ ...statement, input })
      return kept.ok ? done(null) : kept
    })

  /** Sign the attempt as it stands, or in its place what is named. */
  const sign = (
    state: SignerHereState,
    signers: readonly SignerHere[],
    said: { meaning: Meaning; role: Role },
    named?: SigningPlace['covers'],
  ) =>
    signWith(state, signers, ({ key, signer, place }) =>
      signHere(key, signer, named ? { ...place, covers: named, photos: [] } : place, { id: v7(), ...said }),
    )

  return { decide, sign, signWith, refusal, isBusy }
}
