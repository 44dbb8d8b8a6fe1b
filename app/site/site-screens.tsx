'use client'
import { lazy } from 'react'
import { SITE_START, type SitePlace, sitePlaceOf } from '@/lib/capture/site/site-address'

const LOAD = {
  list: () => import('./pinned-list'),
  repair: () => import('./site-repair'),
  point: () => import('./site-point'),
  form: () => import('./site-form'),
  open: () => import('./site-open'),
  outbox: () => import('@/app/_parts/outbox-list'),
  signing: () => import('./site-keys'),
} as const

/** The screens for work without a network, each with a program of its own: a ladder waits for no form, and a form for no camera. */
export const PinnedList = lazy(async () => ({ default: (await LOAD.list()).PinnedList }))
export const SiteRepair = lazy(async () => ({ default: (await LOAD.repair()).SiteRepair }))
export const SitePoint = lazy(async () => ({ default: (await LOAD.point()).SitePoint }))
export const SiteForm = lazy(async () => ({ default: (await LOAD.form()).SiteForm }))
export const SiteOpen = lazy(async () => ({ default: (await LOAD.open()).SiteOpen }))
export const OutboxList = lazy(async () => ({ default: (await LOAD.outbox()).OutboxList }))
export const SiteKeys = lazy(async () => ({ default: (await LOAD.signing()).SiteKeys }))

function screenAt(place: SitePlace): keyof typeof LOAD {
  if (place.show) return place.show
  if (place.open) return 'open'
  if (!place.repair) return 'list'
  return !place.point ? 'repair' : place.form || place.correct ? 'form' : 'point'
}

// The program of the screen in the address is fetched while the device's storage opens, not after. What fails here is asked for again, and told, where it is drawn.
if (typeof location !== 'undefined' && location.pathname === '/site')
  LOAD[screenAt(sitePlaceOf(location.hash) ?? SITE_START)]().catch(() => undefined)
