'use client'
import { useCallback, useEffect, useMemo, useState } from 'react'
import { nameManifest } from '@/app/_capture/name-manifest'
import { keepSending } from '@/app/_capture/page-outbox'
import type { OutboxEntry } from '@/lib/capture/outbox/outbox-entry'
import type { OutboxStatus } from '@/lib/capture/outbox/outbox-terms'
import type { SiteStore } from '@/lib/capture/site/site-store'
import type { TakeRefusal } from '@/lib/capture/site/take-pack'
import type { ProjectPack } from '@/lib/domain/capture/project-pack'
import type { SitePack } from '@/lib/domain/capture/site-pack'
import { findKept, type Kept, readRest } from './find-kept'

/** What this device keeps for the person who works here. */
export type Site = Pick<Kept, 'owner' | 'packs' | 'projects' | 'isPart' | 'page' | 'entries' | 'status' | 'room'> & {
  /** Numbers of repairs among the packs that this device opened and the server gave no pack of yet. */
  openedHere: ReadonlySet<string>
  /** Numbers of a project that are left on this device. */
  numbersOf(project: ProjectPack): string[]
  takeProject(project: string): Promise<TakeRefusal | null>
  drop(number: string): Promise<void>
  take(number: string): Promise<TakeRefusal | null>
}
export type SiteOpening =
  | { kind: 'opening' }
  | { kind: 'no storage' }
  | { kind: 'nobody' }
  | { kind: 'open'; site: Site }

const loadTaking = async () => ({
  ...(await import('@/lib/capture/site/take-pack')),
  ...(await import('@/lib/capture/site/take-project')),
})

/** The list that is shown already where nothing changed in it: a repair is folded anew only for what is new. */
function sameOr(shown: OutboxEntry[], found: OutboxEntry[]): OutboxEntry[] {
  const isSame =
    shown.length === found.length &&
    shown.every(
      (one, at) => one.id === found[at]?.id && one.state === found[at]?.state && one.tries === found[at]?.tries,
    )
  return isSame ? shown : found
}

/** When nothing is left to draw, or soon all the same. */
function idle(): Promise<void> {
  return new Promise((settle) => {
    if ('requestIdleCallback' in window) requestIdleCallback(() => settle(), { timeout: 1000 })
    else setTimeout(settle, 200)
  })
}

const NOTHING: Pick<Kept, 'packs' | 'projects' | 'entries'> = { packs: [], projects: [], entries: [] }

/** Whether something of a repair was received of which its pack here does not know. */
function hasUntaken(packs: readonly SitePack[], entries: readonly OutboxEntry[]): boolean {
  return entries.some(
    ({ id, state, input: { stream } }) =>
      state === 'sent' &&
      stream.startsWith('repair:') &&
      !packs.some((pack) => pack.stream === stream && pack.facts.some((fact) => fact.id === id)),
  )
}

/** Open this device's pinned repairs and outbox, follow both, send what waits, and take pinned repairs anew after a contact. */
export function useSite(): SiteOpening {
  const [opening, setOpening] = useState<SiteOpening['kind']>('opening')
  const [store, setStore] = useState<SiteStore | null>(null)
  const [kept, setKept] = useState<Kept | null>(null)
  const refresh = useCallback(async (from: SiteStore) => {
    const owner = await from.owner()
    const [packs, projects] = owner ? await Promise.all([from.packs(owner), from.projects(owner)]) : [[], []]
    setKept((now) => now && { ...now, packs, projects })
  }, [])
  useEffect(() => {
    const stops: (() => void)[] = []
    let isGone = false
    const open = async () => {
      const found = await findKept()
      if (isGone) return
      if (found.kind !== 'open') return setOpening(found.kind)
      const { kind, store: opened, ...all } = found
      const { owner, page, entries, status, deviceId } = all
      setStore(opened)
      setKept(all)
      setOpening(kind)
      void idle().then(nameManifest)
      let { packs } = all
      if (all.isPart) {
        await idle()
        const whole = await readRest(found)
        if (isGone) return
        packs = whole.packs
        setKept((now) => now && { ...now, ...whole })
      }
      let { waiting } = status
      let taking: Promise<void> | null = null
      const follow = async (next: OutboxStatus) => {
        const all = await page.outbox.entries()
        setKept((now) => now && { ...now, entries: sameOr(now.entries, all), status: next })
        // another window, or the browser in the background, may have sent what this one would have followed with its packs
        const isAllSent = waiting > 0 && next.waiting === 0
        waiting = next.waiting
        if (!isAllSent || !navigator.onLine) return
        await taking
        if (hasUntaken(await opened.packs(owner), all)) await takeAnew()
      }
      stops.push(page.outbox.watch((next) => void follow(next)))
      const takeAnew = async () => {
        taking ??= takeAll().finally(() => {
          taking = null
        })
        await taking
      }
      const takeAll = async () => {
        const { takePack, takeProject } = await loadTaking()
        const known = (await opened.packs(owner)).map((pack) => pack.number)
        const opening = (await page.outbox.entries()).filter(
          (one) => one.command === 'open-repair' && one.state === 'sent',
        )
        const numbers = new Set([...known, ...opening.map((one) => one.input.stream.slice('repair:'.length))])
        for (const number of numbers) await takePack(opened, owner, number)
        for (const { project } of await opened.projects(owner))
          await takeProject(opened, owner, { project, device: deviceId })
        if (!isGone) await refresh(opened)
      }
      stops.push(
        keepSending(page, (outcome) => {
          if (outcome.kind === 'sent') void takeAnew()
        }),
      )
      if (navigator.onLine && hasUntaken(packs, entries)) void takeAnew()
      // what was read before this was watched may have changed since
      const now = await page.outbox.status()
      if (!isGone && JSON.stringify(now) !== JSON.stringify(status)) await follow(now)
    }
    void open()
    return () => {
      isGone = true
      for (const stop of stops) stop()
    }
  }, [refresh])
  const { packs, projects, entries } = kept ?? NOTHING
  const ways = kept?.ways ?? null
  const here = useMemo(
    () =>
      (ways?.openedHere(projects, entries) ?? []).filter((one) => !packs.some((pack) => pack.number === one.number)),
    [ways, packs, projects, entries],
  )
  if (opening !== 'open' || !kept || !store) return { kind: opening === 'open' ? 'opening' : opening }
  return {
    kind: 'open',
    site: {
      ...kept,
      packs: [...packs, ...here],
      openedHere: new Set(here.map((one) => one.number)),
      numbersOf: (project) => ways?.numbersHere(project, kept.deviceId, entries, kept.used) ?? [],
      async takeProject(project) {
        const { takeProject } = await loadTaking()
        const taken = await takeProject(store, kept.owner, { project, device: kept.deviceId })
        await refresh(store)
        return taken.ok ? null : taken.error
      },
      async drop(number) {
        await store.dropPack({ ...kept.owner, number })
        await refresh(store)
      },
      async take(number) {
        const { takePack } = await loadTaking()
        const taken = await takePack(store, kept.owner, number)
        await refresh(store)
        return taken.ok ? null : taken.error
      },
    },
  }
}
