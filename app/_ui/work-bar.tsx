'use client'
import Link from 'next/link'
import { usePathname } from 'next/navigation'
import type { DeviceUser } from '@/app/_capture/follow-device'
import { HandPanel } from '@/app/_parts/hand-panel'
import { OutboxStatusLine } from '@/app/_parts/outbox-status'
import { siteHref } from '@/lib/capture/site/site-address'
import { DemoStrip } from './demo-strip'

const MAIN = [
  ['/waiting', 'Waiting for me'],
  ['/repairs', 'Repairs'],
  ['/register', 'Register'],
  ['/trace', 'Trace'],
  ['/nonconformances', 'Nonconformances'],
] as const
const MORE = [
  ['/scan', 'Scan a label'],
  ['/specifications', 'Specifications'],
  ['/plans', 'Inspection plans'],
  ['/batches', 'Batches'],
  ['/instruments', 'Instruments'],
  ['/people', 'People'],
  ['/projects', 'Projects'],
] as const

/** The bar over every page of the work: where one is, what waits, who is signed in. */
export function WorkBar({
  user,
  waitingCount,
  isAdministrator,
  isAuditor,
  isDemo,
  signOut,
}: {
  user: DeviceUser
  waitingCount: number
  isAdministrator: boolean
  /** Whether the reader reads whole records: the audit room is offered. */
  isAuditor: boolean
  isDemo: boolean
  signOut: () => Promise<void>
}) {
  const path = usePathname()
  const { name } = user
  const leave = async () => {
    const { leaveDevice } = await import('@/app/_capture/follow-device')
    await leaveDevice()
    await signOut()
  }
  const link = (href: string, label: string) => (
    <Link key={href} href={href} aria-current={path.startsWith(href) ? 'page' : undefined}>
      {label}
      {href === '/waiting' && waitingCount > 0 ? ` ${waitingCount}` : ''}
    </Link>
  )
  return (
    <header className="bar">
      <nav className="bar-row has-menu" aria-label="Main">
        <Link className="brand" href="/waiting">
          Underwrap
        </Link>
        <span className="bar-links">{MAIN.map(([href, label]) => link(href, label))}</span>
        <div className="who">
          <details key={path}>
            <summary>
              <span className="who-name">{name}</span>
              <span className="who-short">Menu</span>
            </summary>
            <div>
              <span className="bar-phone">{MAIN.map(([href, label]) => link(href, label))}</span>
              {MORE.map(([href, label]) => link(href, label))}
              {isAuditor ? link('/audit', 'Audit room') : null}
              {isAdministrator ? link('/accounts', 'Accounts and roles') : null}
              <a href={siteHref({})}>On site</a>
              <HandPanel />
              <form action={leave}>
                <button type="submit">Sign out {name}</button>
              </form>
            </div>
          </details>
        </div>
      </nav>
      <OutboxStatusLine user={user} />
      {isDemo ? <DemoStrip /> : null}
    </header>
  )
}
