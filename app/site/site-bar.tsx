'use client'
import { useEffect, useState } from 'react'
import { HandPanel } from '@/app/_parts/hand-panel'
import { OutboxLine } from '@/app/_parts/outbox-line'
import { DemoStrip } from '@/app/_ui/demo-strip'
import { siteHref } from '@/lib/capture/site/site-address'
import type { SiteOpening } from './use-site'

/** The bar over the screens for work without a network: who works here, whether there is a network, what is not yet sent. */
export function SiteBar({ opening }: { opening: SiteOpening }) {
  const isOnline = useIsOnline()
  return (
    <header className="bar">
      <nav className="bar-row has-menu" aria-label="Main">
        <a className="brand" href={siteHref({})}>
          On site
        </a>
        <div className="who">
          <span className="site-net">{isOnline ? 'Network' : 'No network'}</span>
          <details>
            <summary>Menu</summary>
            <div>
              {opening.kind === 'open' ? <span className="site-name">{opening.site.owner.name}</span> : null}
              <a href={siteHref({ show: 'outbox' })}>What is not yet sent</a>
              <a href={siteHref({ show: 'signing' })}>Sign on this device</a>
              <HandPanel />
              <a href="/waiting">The whole record</a>
            </div>
          </details>
        </div>
      </nav>
      {opening.kind === 'open' && opening.site.packs.some((one) => one.clockKind === 'demo') ? <DemoStrip /> : null}
      {opening.kind === 'open' ? <OutboxLine status={opening.site.status} nowMs={opening.site.page.nowMs} /> : null}
    </header>
  )
}

function useIsOnline(): boolean {
  const [isOnline, setOnline] = useState(true)
  useEffect(() => {
    const look = () => setOnline(navigator.onLine)
    look()
    for (const name of ['online', 'offline'] as const) window.addEventListener(name, look)
    return () => {
      for (const name of ['online', 'offline'] as const) window.removeEventListener(name, look)
    }
  }, [])
  return isOnline
}
