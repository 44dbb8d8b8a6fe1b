'use client'
import { AttemptHistory } from '@/app/_parts/attempt-history'
import { BeforeRelease } from '@/app/_parts/before-release'
import { idleKeys, signersHere } from '@/lib/capture/signing/signers-here'
import { siteHref } from '@/lib/capture/site/site-address'
import type { SiteState } from '@/lib/capture/site/site-state'
import type { SitePack } from '@/lib/domain/capture/site-pack'
import type { DecidingActor } from '@/lib/domain/fold/decision'
import type { AttemptState, PointState } from '@/lib/domain/fold/repair-state'
import { mayAct } from '@/lib/domain/permissions'
import { SiteConflicts } from './site-conflicts'
import { SiteOtherActs } from './site-other-acts'
import { SiteRelease } from './site-release'
import { SiteSign } from './site-sign'
import { type KeysHere, useKeyRing } from './use-key-ring'
import type { Site } from './use-site'

type Props = {
  site: Site
  pack: SitePack
  folded: SiteState
  point: PointState
  attempt: AttemptState
}

/** What may be signed and decided at a point on this device, network or not: the fold says what is possible, the outbox keeps it. */
export function SiteActs({ site, pack, folded, point, attempt }: Props) {
  const keys = useKeyRing(pack.tenant)
  const ground = { site, pack, attempt, keys }
  const isLatest = attempt === point.current
  const me = pack.signers?.find((one) => one.person === pack.person)
  const actor: DecidingActor = { person: pack.person, roles: pack.roles, approve: me?.approves ?? false }
  return (
    <>
      {isLatest && attempt.missing.length > 0 && attempt.records.length > 0 && attempt.state !== 'released' ? (
        <BeforeRelease attempt={attempt} />
      ) : null}
      <SiteConflicts ground={ground} folded={folded} point={point} />
      <NoSigning pack={pack} keys={keys} />
      {isLatest && attempt.records.length > 0 ? <SiteSign ground={ground} point={point} /> : null}
      {isLatest ? (
        <SiteRelease
          ground={ground}
          state={folded.state}
          point={point}
          mayRecord={attempt.records.length > 0 && mayAct('submit-point', pack.roles) === 'may'}
        />
      ) : null}
      <AttemptHistory view={{ attempt, names: folded.names }} unsent={folded.unsent} />
      {isLatest ? <SiteOtherActs ground={ground} state={folded.state} point={point} actor={actor} /> : null}
    </>
  )
}

/** Why nobody, or not everybody, signs on this device, and the way to change that. */
function NoSigning({ pack, keys }: { pack: SitePack; keys: KeysHere }) {
  if (keys.ring === 'opening') return null
  const { newer, ended } = idleKeys(pack, keys.keys)
  if (keys.ring === 'none')
    return (
      <div className="note warn">
        <strong>Nobody signs in this browser.</strong>
        <span>
          It keeps no keys: in a private window, or on an address that is not secure. What is captured waits all the
          same.
        </span>
      </div>
    )
  if (pack.signers === undefined || newer.length > 0)
    return (
      <div className="note warn">
        <strong>
          {newer.length > 0
            ? `The key of ${newer.join(', ')} is newer than this repair on the device.`
            : 'This repair was taken along without the names of who signs.'}
        </strong>
        <span>Take it anew where there is a network, then sign.</span>
        <a href={siteHref({})}>To the repairs on this device</a>
      </div>
    )
  if (ended.length > 0)
    return (
      <div className="note warn">
        <strong>The key of {ended.join(', ')} was ended in the record.</strong>
        <span>It signs nothing more. Sign before the server, or make a new key where there is a network.</span>
        <a href={siteHref({ show: 'signing' })}>Sign on this device</a>
      </div>
    )
  if (signersHere(pack, keys.keys).length > 0) return null
  return (
    <div className="note">
      <strong>Nobody signs on this device.</strong>
      <span>
        Set up signing where there is a network. After that, signatures and releases are given here with a PIN.
      </span>
      <a className="button plain" href={siteHref({ show: 'signing' })}>
        Sign on this device
      </a>
    </div>
  )
}
