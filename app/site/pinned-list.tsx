'use client'
import { useMemo, useState } from 'react'
import { NotSecureNote } from '@/app/_parts/not-secure-note'
import { OutboxRefusal } from '@/app/_parts/outbox-refusal'
import { RoomNote } from '@/app/_parts/room-note'
import { siteHref } from '@/lib/capture/site/site-address'
import { stateOnSite } from '@/lib/capture/site/site-state'
import type { SitePack } from '@/lib/domain/capture/site-pack'
import { showMoment } from '@/lib/domain/time'
import { waitingLines } from '@/lib/domain/waiting/waiting-lines'
import { NumberDesk } from './number-desk'
import type { Site } from './use-site'

/** Repairs taken along, with what waits in each for the person who works here. */
export function PinnedList({ site, lacking = null }: { site: Site; lacking?: string | null }) {
  return (
    <main className="page narrow" id="main">
      <div className="page-head">
        <h1>On this device</h1>
      </div>
      <div className="stack">
        <NotSecureNote />
        <RoomNote room={site.room} />
        {lacking ? (
          <div className="note warn">
            <strong>{lacking} is not on this device.</strong>
            <span>Take it along from its page, where there is a network.</span>
          </div>
        ) : null}
        {site.packs.length === 0 ? (
          <div className="note">
            <strong>No repair is on this device.</strong>
            <span>
              Open a repair where there is a network and choose “Take to site”. It then opens here with its plan,
              limits, instruments, batches and forms, and what you capture is kept until it is sent.
            </span>
            <a className="button plain" href="/repairs">
              To the repairs
            </a>
          </div>
        ) : null}
        {site.packs.map((pack) => (
          <Pinned key={pack.number} site={site} pack={pack} />
        ))}
        <NumberDesk site={site} />
      </div>
    </main>
  )
}

function Pinned({ site, pack }: { site: Site; pack: SitePack }) {
  const [refusal, setRefusal] = useState<{ code: string } | null>(null)
  const [isTaking, setTaking] = useState(false)
  const { entries, page } = site
  const { state } = useMemo(() => stateOnSite(pack, entries, page.nowMs()), [pack, entries, page])
  const lines = waitingLines(state, pack.roles, pack.person).filter((line) => line.point !== null)
  const waits = entries.filter(
    (one) => one.input.stream === pack.stream && one.state !== 'sent' && one.state !== 'set aside',
  ).length
  const take = async () => {
    setTaking(true)
    setRefusal(await site.take(pack.number))
    setTaking(false)
  }
  return (
    <section className="sheet">
      <div className="sheet-head">
        <h2>
          <a href={siteHref({ repair: pack.number })}>Repair {pack.number}</a>
        </h2>
        <span className="quiet">{state.opened.body.line}</span>
      </div>
      <ul className="site-waits">
        {lines.slice(0, 6).map((line) => (
          <li key={`${line.point}${line.kind}`}>
            <a href={siteHref({ repair: pack.number, point: line.point })}>{line.title}</a>
            <span className="quiet small">{line.detail}</span>
          </li>
        ))}
        {lines.length === 0 ? <li className="quiet">Nothing waits for you here.</li> : null}
      </ul>
      <p className="quiet small">
        {site.openedHere.has(pack.number)
          ? 'Opened on this device.'
          : `As the server knew it ${showMoment(pack.takenAt)}.`}
        {waits > 0 ? ` ${waits} ${waits === 1 ? 'entry' : 'entries'} since then on this device alone.` : ''}
      </p>
      {site.openedHere.has(pack.number) ? null : (
        <div className="row">
          <button type="button" className="button plain" disabled={isTaking} onClick={() => void take()}>
            {isTaking ? 'Taking it anew' : 'Take it anew'}
          </button>
          <button type="button" className="button plain" onClick={() => void site.drop(pack.number)}>
            Leave it behind
          </button>
        </div>
      )}
      {refusal ? <OutboxRefusal refusal={refusal} /> : null}
    </section>
  )
}
