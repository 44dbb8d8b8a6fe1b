import Link from 'next/link'
import { notFound } from 'next/navigation'
import { BarredNote } from '@/app/_desk/barred-note'
import { EventTrail } from '@/app/_desk/event-trail'
import { mayReadStores, pathOf, requireDesk, streamAt } from '@/app/_desk/require-desk'
import { StandingMark } from '@/app/_desk/standing-mark'
import { showReadingUnit } from '@/lib/domain/reading'
import { loadBatchView } from '@/lib/server/views/batch-view'
import { BatchActs } from './batch-acts'

export default async function BatchPage({ params }: { params: Promise<{ name: string }> }) {
  const reading = await requireDesk()
  const stream = streamAt('batch', (await params).name)
  if (!mayReadStores(reading)) return <BarredNote title="Batch" forWhom="everyone with a role in a project" />
  const view = await loadBatchView(reading, stream)
  if (!view) notFound()
  const { received, number, expiresOn } = view.state
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            {received.product}, {received.role}
          </p>
          <h1>Batch {number}</h1>
          <dl className="facts">
            <div>
              <dt>Received</dt>
              <dd>{received.quantity ? showReadingUnit(received.quantity) : 'amount not stated'}</dd>
            </div>
            <div>
              <dt>Use by</dt>
              <dd>{expiresOn ?? 'not stated'}</dd>
            </div>
            <div>
              <dt>Certificate</dt>
              <dd>{received.certificate ?? 'none stated'}</dd>
            </div>
          </dl>
        </div>
        <div className="stack tight">
          <StandingMark standing={view.standing} />
          <Link className="button plain" href={`${pathOf('batches', stream)}/label`}>
            Print a label
          </Link>
          <Link className="button" href={pathOf('trace/batch', stream)}>
            Where it went
          </Link>
        </div>
      </div>
      {view.standing === 'recalled' || view.standing === 'quarantined' ? (
        <p className="note refused">
          <strong>Barred from use.</strong>{' '}
          <span>
            Part kits and left-overs in the store too.{' '}
            {view.state.recalled ? `Recalled: ${view.state.recalled.body.reason}` : ''}
          </span>
        </p>
      ) : null}
      {view.standing === 'expired' ? (
        <p className="note refused">
          <strong>Past its use-by day.</strong>{' '}
          <span>Use is barred; a use that happened anyway is recorded and becomes a nonconformance.</span>
        </p>
      ) : null}
      <div className="two">
        <section className="sheet">
          <h2>What was done with it</h2>
          <EventTrail events={view.events} label={`What was done with batch ${number}`} />
        </section>
        <div className="stack">
          <BatchActs reading={reading} view={view} />
          <section className="sheet">
            <h2>Label and package</h2>
            <dl className="pairs">
              <dt>Label</dt>
              <dd>{view.labelText ?? 'no text kept'}</dd>
              <dt>Label read</dt>
              <dd>{view.labelRead}</dd>
              <dt>Article number</dt>
              <dd>{received.gtin ?? 'none stated'}</dd>
              <dt>Made on</dt>
              <dd>{received.madeOn ?? 'not stated'}</dd>
              <dt>Use by, as labelled</dt>
              <dd>{received.expiryAsLabelled ?? received.expiresOn ?? 'not stated'}</dd>
              <dt>Once opened</dt>
              <dd>{received.openedLifeDays ? `${received.openedLifeDays} days` : 'not stated'}</dd>
              <dt>Storage</dt>
              <dd>
                {received.storageMin || received.storageMax
                  ? [received.storageMin, received.storageMax]
                      .map((one) => (one ? showReadingUnit(one) : '…'))
                      .join(' to ')
                  : 'not stated'}
              </dd>
            </dl>
          </section>
        </div>
      </div>
    </main>
  )
}
