import Link from 'next/link'
import { redirect } from 'next/navigation'
import { WindowLine } from '@/app/_parts/window-line'
import { EmptyNote } from '@/app/_ui/empty-note'
import { instantOf } from '@/lib/domain/time'
import { openReadingDesk } from '@/lib/server/views/reading-desk'
import { loadWaitingView, type WaitingLine } from '@/lib/server/views/waiting-view'

export const metadata = { title: 'Waiting for me' }

const GROUPS: readonly (readonly [WaitingLine['kind'], string])[] = [
  ['release', 'To release'],
  ['decide', 'To decide'],
  ['check', 'Paper to check'],
  ['record', 'Open to record'],
]

export default async function WaitingPage() {
  const reading = await openReadingDesk()
  if (!reading) redirect('/sign-in')
  const view = await loadWaitingView(reading)
  const nowMs = instantOf(reading.desk.now(null))
  return (
    <main className="page" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            {reading.actor.name}
            {reading.roles.length > 0 ? `, ${reading.roles.join(', ')}` : ''}
          </p>
          <h1>Waiting for me</h1>
        </div>
      </div>
      {view.lines.length === 0 && view.windows.length === 0 ? (
        <EmptyNote title="Nothing waits for you.">
          <Link className="button plain" href="/repairs">
            To the repairs
          </Link>
        </EmptyNote>
      ) : (
        <div className="two">
          <div className="stack">
            {GROUPS.map(([kind, title]) => (
              <Group key={kind} title={title} lines={view.lines.filter((line) => line.kind === kind)} />
            ))}
          </div>
          <section className="sheet">
            <h2>Windows that run</h2>
            {view.windows.length === 0 ? (
              <p className="quiet">None is running.</p>
            ) : (
              view.windows.map(({ repair, window }) => (
                <div key={`${repair}${window.criterion}${window.attempt}`}>
                  <Link href={`/repairs/${repair}/points/${window.point}`}>{repair}</Link>
                  <WindowLine window={window} nowMs={nowMs} />
                </div>
              ))
            )}
          </section>
        </div>
      )}
    </main>
  )
}

function Group({ title, lines }: { title: string; lines: WaitingLine[] }) {
  if (lines.length === 0) return null
  return (
    <section className="sheet">
      <div className="sheet-head">
        <h2>{title}</h2>
        <span className="quiet">{lines.length}</span>
      </div>
      <ul className="plain-list">
        {lines.map((line) => (
          <li key={`${line.href}${line.title}`}>
            <Link className="link-row" href={line.href}>
              <strong>{line.title}</strong>
              <span className="quiet">
                {line.repair} · {line.detail}
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </section>
  )
}
