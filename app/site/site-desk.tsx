'use client'
import { type MouseEvent, type ReactNode, Suspense } from 'react'
import * as z from 'zod'
import { NotSecureNote, useIsSecure } from '@/app/_parts/not-secure-note'
import type { SitePlace } from '@/lib/capture/site/site-address'
import { SiteBar } from './site-bar'
import { Drawn, SCREENS } from './site-screens'
import { goTo, usePlace } from './use-place'
import { type Site, type SiteOpening, useSite } from './use-site'

// A device holds few values against each schema: writing a program for each first costs a form more than it saves. A server, which draws the shell too, holds many.
if (typeof document !== 'undefined') z.config({ jitless: true })

/** The screens that work without a network, by the address: pinned repairs, one repair, one point, one form, what waits to be sent. */
export function SiteDesk() {
  const opening = useSite()
  const place = usePlace()
  return (
    // Links within these screens change the address alone: a reload would open everything anew from the device.
    // biome-ignore lint/a11y/noStaticElementInteractions: the links in it are what is clicked, by any means
    // biome-ignore lint/a11y/useKeyWithClickEvents: a link's own key already gives a click
    <div onClick={goWithin}>
      <SiteBar opening={opening} />
      {opening.kind === 'open' ? (
        <Suspense fallback={<Closed kind="opening" />}>
          <Screen site={opening.site} place={place} />
        </Suspense>
      ) : (
        <Closed kind={opening.kind} />
      )}
    </div>
  )
}

function Screen({ site, place }: { site: Site; place: SitePlace }): ReactNode {
  if (place.show === 'outbox') return <Drawn key="outbox" screen={SCREENS.outbox} props={{ site }} />
  if (place.show === 'signing') return <Drawn key="signing" screen={SCREENS.signing} props={{ site }} />
  const pack = site.packs.find((one) => one.number === place.repair)
  if (site.isPart && !pack) return <Closed kind="opening" />
  const project = site.projects.find((one) => one.project === `project:${place.open}`)
  if (project) return <Drawn key={project.project} screen={SCREENS.open} props={{ site, project }} />
  if (!place.repair) return <Drawn key="list" screen={SCREENS.list} props={{ site }} />
  if (!pack) return <Drawn key="lacking" screen={SCREENS.list} props={{ site, lacking: place.repair }} />
  const { point } = place
  if (point && (place.form || place.correct))
    return <Drawn key={JSON.stringify(place)} screen={SCREENS.form} props={{ site, pack, place, point }} />
  return point ? (
    <Drawn key="point" screen={SCREENS.point} props={{ site, pack, place, point }} />
  ) : (
    <Drawn key="repair" screen={SCREENS.repair} props={{ site, pack }} />
  )
}

function Closed({ kind }: { kind: Exclude<SiteOpening['kind'], 'open'> }) {
  const isSecure = useIsSecure()
  return (
    <main className="page narrow" id="main">
      <NotSecureNote />
      {kind === 'opening' ? <p className="quiet">Opening what this device keeps.</p> : null}
      {kind === 'no storage' ? (
        <div className="note refused">
          <strong>This browser keeps nothing.</strong>
          <span>A private window or a policy stops it. Without storage there is no capture without a network.</span>
        </div>
      ) : null}
      {kind === 'nobody' && isSecure !== false ? (
        <div className="note warn">
          <strong>Nobody is signed in on this device.</strong>
          <span>Sign in where there is a network, then take repairs along from their pages.</span>
          <a className="button" href="/sign-in">
            Sign in
          </a>
        </div>
      ) : null}
    </main>
  )
}

function goWithin(event: MouseEvent<HTMLElement>): void {
  const link = event.target instanceof Element ? event.target.closest('a') : null
  if (!link || event.defaultPrevented || event.metaKey || event.ctrlKey || event.shiftKey || event.button !== 0) return
  if (link.origin !== location.origin || link.pathname !== '/site' || link.target !== '') return
  event.preventDefault()
  goTo(link.href)
}
