import Link from 'next/link'
import { notFound, redirect } from 'next/navigation'
import { IssueDossierForm } from '@/app/_parts/issue-dossier-form'
import { TransmittalForm } from '@/app/_parts/transmittal-form'
import { EmptyNote } from '@/app/_ui/empty-note'
import { showMoment } from '@/lib/domain/time'
import { clockKindOf } from '@/lib/server/views/clock-kind'
import { openReadingDesk } from '@/lib/server/views/reading-desk'
import { loadRepairView } from '@/lib/server/views/repair-view'

export const metadata = { title: 'Dossier' }

export default async function DossierPage({ params }: { params: Promise<{ number: string }> }) {
  const reading = await openReadingDesk()
  if (!reading) redirect('/sign-in')
  const number = decodeURIComponent((await params).number)
  const view = await loadRepairView(reading, number)
  if (!view) notFound()
  const { state } = view
  const at = `/api/dossiers/${encodeURIComponent(number)}`
  const clockKind = await clockKindOf(reading.desk.store, reading.actor.tenant)
  const mayIssue = view.roles.includes('inspector')
  return (
    <main className="page" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            <Link href={`/repairs/${encodeURIComponent(number)}`}>‹ {number}</Link>
          </p>
          <h1>Dossier</h1>
        </div>
        <div className="row">
          <a className="button plain" href={`${at}/review`} download>
            Copy for review
          </a>
          <a className="button plain" href={`${at}/package/review`} download>
            With originals (ZIP)
          </a>
        </div>
      </div>
      <div className="two">
        <section className="sheet">
          <div className="sheet-head">
            <h2>Issued revisions</h2>
            <span className="quiet">frozen, stored, never built again</span>
          </div>
          {state.issues.length === 0 ? (
            <EmptyNote title="No revision is issued yet.">
              <span>A copy for review shows what is there, and what is missing.</span>
            </EmptyNote>
          ) : (
            <ul className="plain-list">
              {[...state.issues].reverse().map(({ fact, transmitted }) => (
                <li key={fact.id} className="stack tight">
                  <div className="row between">
                    <strong>
                      Rev {fact.body.revision}, {fact.body.purpose}
                    </strong>
                    <div className="row">
                      <a
                        className="button plain"
                        href={`${at}/${fact.body.revision}`}
                        download
                        aria-label={`Download rev ${fact.body.revision}`}
                      >
                        Download
                      </a>
                      <a
                        className="button plain"
                        href={`${at}/package/${fact.body.revision}`}
                        download
                        aria-label={`With originals (ZIP): package of rev ${fact.body.revision} with original photos, certificates and readings`}
                      >
                        With originals (ZIP)
                      </a>
                    </div>
                  </div>
                  <span className="quiet small">
                    issued {showMoment(fact.observedAt)} by {view.names[fact.observedBy] ?? fact.observedBy};{' '}
                    {fact.body.pageCount} pages, {Math.round(fact.body.sizeBytes / 1024)} KiB, as of{' '}
                    {showMoment(fact.body.asOf)}, {fact.body.missing.length} missing
                  </span>
                  <span className="digest">SHA-256 {fact.body.sha256}</span>
                  {fact.body.changes.map((change) => (
                    <span key={change} className="small">
                      Changed: {change}
                    </span>
                  ))}
                  {transmitted.map((one) => (
                    <span key={one.id} className="small">
                      Sent to {one.body.to} by {one.body.how}, {showMoment(one.body.at)}
                    </span>
                  ))}
                  {mayIssue ? (
                    <TransmittalForm
                      stream={`dossier:${number}`}
                      issue={fact.id}
                      utcOffset={state.opened.observedAt.slice(-6)}
                      clockKind={clockKind}
                    />
                  ) : null}
                </li>
              ))}
            </ul>
          )}
        </section>
        <div className="stack">
          {state.revisionDue && state.issues.length > 0 ? (
            <p className="note warn">
              <strong>A revision is due.</strong>
              <span>The record moved after the last issue. Every receiver of it must be told.</span>
            </p>
          ) : null}
          {mayIssue ? (
            <IssueDossierForm
              repair={number}
              next={state.issues.length === 0 ? 0 : (state.issues.at(-1)?.fact.body.revision ?? 0) + 1}
            />
          ) : null}
          <section className="sheet">
            <div className="sheet-head">
              <h2>Missing today</h2>
              <span className="quiet">{state.missing.length}</span>
            </div>
            <ul className="plain-list">
              {state.missing.map((one) => (
                <li key={`${one.point}${one.text}`}>
                  {one.point ? `${one.point}: ` : ''}
                  {one.text}
                </li>
              ))}
            </ul>
          </section>
        </div>
      </div>
    </main>
  )
}
