'use client'
import { useCallback, useEffect, useState } from 'react'
import { keepSending, type PageOutbox, pageOutbox } from '@/app/_capture/page-outbox'
import type { Room } from '@/lib/capture/outbox/device-storage'
import type { OutboxEntry } from '@/lib/capture/outbox/outbox-entry'
import type { OutboxStatus } from '@/lib/capture/outbox/outbox-terms'
import type { SendOutcome } from '@/lib/capture/outbox/send-entries'
import { openSiteStore, type SiteOwner, type SiteStore } from '@/lib/capture/site/site-store'
import { type TakeRefusal, takePack } from '@/lib/capture/site/take-pack'
import type { SitePack } from '@/lib/domain/capture/site-pack'

/** What this device keeps for the person who works here. */
export type Site = {
  owner: SiteOwner
  packs: SitePack[]
  page: PageOutbox
  entries: OutboxEntry[]
  status: OutboxStatus
  room: Room
  drop(number: string): Promise<void>
  take(number: string): Promise<TakeRefusal | null>
}
export type SiteOpening =
  | { kind: 'opening' }
  | { kind: 'no storage' }
  | { kind: 'nobody' }
  | { kind: 'open'; site: Site }

type Kept = Omit<Site, 'drop' | 'take'>

/** The list that is shown already where nothing changed in it: a repair is folded anew only for what is new. */
function sameOr(shown: OutboxEntry[], found: OutboxEntry[]): OutboxEntry[] {
  const isSame =
    shown.length === found.length &&
    shown.every(
      (one, at) => one.id === found[at]?.id && one.state === found[at]?.state && one.tries === found[at]?.tries,
    )
  return isSame ? shown : found
}

/** Open this device's pinned repairs and outbox, follow both, send what waits, and take pinned repairs anew after a contact. */
export function useSite(): SiteOpening {
  const [opening, setOpening] = useState<SiteOpening['kind']>('opening')
  const [store, setStore] = useState<SiteStore | null>(null)
  const [kept, setKept] = useState<Kept | null>(null)
  const refresh = useCallback(async (from: SiteStore) => {
    const owner = await from.owner()
    const packs = owner ? await from.packs(owner) : []
    setKept((now) => now && { ...now, packs })
  }, [])
  useEffect(() => {
    const stops: (() => void)[] = []
    let isGone = false
    const open = async () => {
      const opened = await openSiteStore()
      if (!opened) return setOpening('no storage')
      const owner = await opened.owner()
      if (!owner) return setOpening('nobody')
      const page = await pageOutbox(owner)
      const [packs, entries, status, room] = await Promise.all([
        opened.packs(owner),
        page.outbox.entries(),
        page.outbox.status(),
        page.outbox.room(),
      ])
      if (isGone) return
      setStore(opened)
      setKept({ owner, packs, page, entries, status, room })
      setOpening('open')
      stops.push(
        page.outbox.watch((next) => {
          void page.outbox
            .entries()
            .then((all) => setKept((now) => now && { ...now, entries: sameOr(now.entries, all), status: next }))
        }),
      )
      const takeAnew = async (outcome: SendOutcome) => {
        if (outcome.kind !== 'sent') return
        for (const pack of await opened.packs(owner)) await takePack(opened, owner, pack.number)
        if (!isGone) await refresh(opened)
      }
      stops.push(keepSending(page, (outcome) => void takeAnew(outcome)))
    }
    void open()
    return () => {
      isGone = true
      for (const stop of stops) stop()
    }
  }, [refresh])
  if (opening !== 'open' || !kept || !store) return { kind: opening === 'open' ? 'opening' : opening }
  return {
    kind: 'open',
    site: {
      ...kept,
      async drop(number) {
        await store.dropPack({ ...kept.owner, number })
        await refresh(store)
      },
      async take(number) {
        const taken = await takePack(store, kept.owner, number)
        await refresh(store)
        return taken.ok ? null : taken.error
      },
    },
  }
}
