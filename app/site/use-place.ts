'use client'
import { useMemo, useSyncExternalStore } from 'react'
import { SITE_START, type SitePlace, siteHref, sitePlaceOf } from '@/lib/capture/site/site-address'

const followers = new Set<() => void>()

/** The place in the screens for work without a network, by the address. */
export function usePlace(): SitePlace {
  const hash = useSyncExternalStore(
    follow,
    () => location.hash,
    () => '',
  )
  return useMemo(() => sitePlaceOf(hash) ?? SITE_START, [hash])
}

/** Go to a place within these screens: the address changes, nothing is loaded anew. */
export function goTo(href: string): void {
  history.pushState(null, '', href)
  window.scrollTo(0, 0)
  for (const look of followers) look()
}

function follow(tell: () => void): () => void {
  let shown = location.hash
  const look = () => {
    // a jump within the page, to its start for one, keeps the place
    const href = sitePlaceOf(location.hash) === null ? siteHref({}) + shown : location.href
    // the framework is told of a place that came from outside: it would put its own address back after its next answer
    if (history.state === null || href !== location.href) history.replaceState(null, '', href)
    shown = location.hash
    tell()
  }
  followers.add(look)
  for (const name of ['hashchange', 'popstate'] as const) window.addEventListener(name, look)
  return () => {
    followers.delete(look)
    for (const name of ['hashchange', 'popstate'] as const) window.removeEventListener(name, look)
  }
}
