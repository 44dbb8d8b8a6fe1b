'use client'
import { useEffect, useState } from 'react'
import { siteHref } from '@/lib/capture/site/site-address'
import type { SiteOwner } from '@/lib/capture/site/site-store'
import { dayOf, showClock } from '@/lib/domain/time'
import { NotSecureNote } from './not-secure-note'
import { OutboxRefusal } from './outbox-refusal'

type State = { kind: 'asking' | 'not secure' | 'not here' | 'taking' } | { kind: 'here'; takenAt: string }

/** Takes a repair along on this device, so that it opens without a network; then says since when it is here. */
export function TakeToSite({ number, owner }: { number: string; owner: Pick<SiteOwner, 'tenant' | 'person'> }) {
  const { tenant, person } = owner
  const [state, setState] = useState<State>({ kind: 'asking' })
  const [refusal, setRefusal] = useState<{ code: string } | null>(null)
  useEffect(() => {
    const look = async () => {
      if (!window.isSecureContext) return setState({ kind: 'not secure' })
      const { openSiteStore } = await import('@/lib/capture/site/site-store')
      const store = await openSiteStore()
      const pack = (await store?.packs({ tenant, person }))?.find((one) => one.number === number)
      store?.close()
      setState(pack ? { kind: 'here', takenAt: pack.takenAt } : { kind: 'not here' })
    }
    void look()
  }, [number, tenant, person])
  const take = async () => {
    setState({ kind: 'taking' })
    const [{ openSiteStore }, { takePack }] = await Promise.all([
      import('@/lib/capture/site/site-store'),
      import('@/lib/capture/site/take-pack'),
    ])
    const store = await openSiteStore()
    const taken = store ? await takePack(store, { tenant, person }, number) : null
    store?.close()
    setRefusal(taken === null ? { code: 'storage-refused' } : taken.ok ? null : taken.error)
    setState(taken?.ok ? { kind: 'here', takenAt: taken.value.takenAt } : { kind: 'not here' })
  }
  return (
    <>
      {state.kind === 'here' ? (
        <a className="button plain" href={siteHref({ repair: number })}>
          On this device, {dayOf(state.takenAt).slice(5)} {showClock(state.takenAt).slice(0, 5)}
        </a>
      ) : state.kind === 'not secure' ? null : (
        <button type="button" className="button plain" disabled={state.kind !== 'not here'} onClick={() => void take()}>
          {state.kind === 'taking' ? 'Taking it along' : 'Take to site'}
        </button>
      )}
      <NotSecureNote />
      {refusal ? <OutboxRefusal refusal={refusal} /> : null}
    </>
  )
}
