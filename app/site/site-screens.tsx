'use client'
import { type ComponentType, lazy, useState } from 'react'
import { isSitePage, SITE_START, type SitePlace, sitePlaceOf } from '@/lib/capture/site/site-address'

type Program<Props> = {
  load(): Promise<unknown>
  /** What draws the screen, once its program is here. */
  here(): ComponentType<Props> | null
  Later: ComponentType<Props>
}

/** The screens for work without a network, each with a program of its own: a ladder waits for no form, and a form for no camera. */
export const SCREENS = {
  list: programOf(async () => (await import('./pinned-list')).PinnedList),
  repair: programOf(async () => (await import('./site-repair')).SiteRepair),
  point: programOf(async () => (await import('./site-point')).SitePoint),
  form: programOf(async () => (await import('./site-form')).SiteForm),
  open: programOf(async () => (await import('./site-open')).SiteOpen),
  outbox: programOf(async () => (await import('@/app/_parts/outbox-list')).OutboxList),
  signing: programOf(async () => (await import('./site-keys')).SiteKeys),
} as const

/** A screen, drawn at once where its program is here already and waited for otherwise; keyed by its name, since each keeps what was begun in it. */
export function Drawn<Props extends object>({ screen, props }: { screen: Program<Props>; props: Props }) {
  const [Shown] = useState<ComponentType<Props>>(() => screen.here() ?? screen.Later)
  return <Shown {...props} />
}

function programOf<Props extends object>(ask: () => Promise<ComponentType<Props>>): Program<Props> {
  let shown: ComponentType<Props> | null = null
  const load = async () => {
    shown ??= await ask()
    return { default: shown }
  }
  return { load, here: () => shown, Later: lazy(load) as unknown as ComponentType<Props> }
}

function screenAt(place: SitePlace): keyof typeof SCREENS {
  if (place.show) return place.show
  if (place.open) return 'open'
  if (!place.repair) return 'list'
  return !place.point ? 'repair' : place.form || place.correct ? 'form' : 'point'
}

/** The program of the screen in the address, asked for while the device's storage opens and not after. Settles when it is here; what fails is asked for again, and told, where it is drawn. */
export const firstScreen: Promise<unknown> = isSitePage()
  ? SCREENS[screenAt(sitePlaceOf(location.hash) ?? SITE_START)].load().catch(() => undefined)
  : Promise.resolve()
