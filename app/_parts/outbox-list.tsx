'use client'
import type { Site } from '@/app/site/use-site'
import { isOpen } from '@/lib/capture/outbox/outbox-entry'
import { NotSecureNote } from './not-secure-note'
import { OutboxCarry } from './outbox-carry'
import { OutboxRow } from './outbox-row'
import { RoomNote } from './room-note'

/** Everything that this device captured and the server has not: what waits, what was refused and why, what to do. */
export function OutboxList({ site }: { site: Site }) {
  const { entries, page } = site
  const refused = entries.filter((one) => one.state === 'refused')
  const waiting = entries.filter((one) => isOpen(one) && one.state !== 'refused')
  const aside = entries.filter((one) => one.state === 'set aside')
  const sent = entries.filter((one) => one.state === 'sent')
  return (
    <main className="page narrow" id="main">
      <div className="page-head">
        <h1>Not yet sent</h1>
        <button type="button" className="button" onClick={() => void page.send()}>
          Send now
        </button>
      </div>
      <div className="stack">
        <NotSecureNote />
        <RoomNote room={site.room} />
        {refused.length > 0 ? (
          <section className="sheet">
            <h2>Refused: for you to deal with</h2>
            <ul className="outbox">
              {refused.map((entry) => (
                <OutboxRow key={entry.id} entry={entry} page={page} />
              ))}
            </ul>
          </section>
        ) : null}
        <section className="sheet">
          <h2>Waiting</h2>
          {waiting.length === 0 ? (
            <p className="quiet">Nothing waits on this device.</p>
          ) : (
            <ul className="outbox">
              {waiting.map((entry) => (
                <OutboxRow key={entry.id} entry={entry} page={page} />
              ))}
            </ul>
          )}
        </section>
        {sent.length > 0 || aside.length > 0 ? (
          <details className="sheet">
            <summary className="fold-head">
              Sent in the last week: {sent.length}. Set aside: {aside.length}.
            </summary>
            <ul className="outbox">
              {[...aside, ...sent.toReversed()].map((entry) => (
                <OutboxRow key={entry.id} entry={entry} page={page} />
              ))}
            </ul>
          </details>
        ) : null}
        <OutboxCarry page={page} />
      </div>
    </main>
  )
}
