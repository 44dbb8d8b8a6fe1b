import Link from 'next/link'
import { notFound } from 'next/navigation'
import { BalanceStrip } from '@/app/_desk/balance-strip'
import { BarredNote } from '@/app/_desk/barred-note'
import { EventTrail } from '@/app/_desk/event-trail'
import { onlyReadable } from '@/app/_desk/readable-repairs'
import { mayReadStores, pathOf, requireDesk, streamAt } from '@/app/_desk/require-desk'
import { StandingMark } from '@/app/_desk/standing-mark'
import { HiddenUses, UseTable } from '@/app/_desk/use-table'
import { EmptyNote } from '@/app/_ui/empty-note'
import { traceBatchView } from '@/lib/server/views/trace-batch-view'
import { TracedRepairs } from './traced-repairs'

export default async function TraceBatchPage({ params }: { params: Promise<{ name: string }> }) {
  const reading = await requireDesk()
  if (!mayReadStores(reading))
    return <BarredNote title="Trace of a batch" forWhom="everyone with a role in a project" />
  const stream = streamAt('batch', (await params).name)
  const name = stream.slice('batch:'.length)
  const view = await traceBatchView(reading.desk.store, reading.actor.tenant, name)
  if (!view) notFound()
  const uses = await onlyReadable(reading, view.uses)
  const repairs = await onlyReadable(reading, view.repairs)
  const attempts = new Set(
    uses.shown
      .filter((use) => use.role !== 'refused' && use.role !== 'taken')
      .map((use) => `${use.number} ${use.attempt}`),
  ).size
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            {view.product}, {view.role}
          </p>
          <h1>Where batch {view.number} went</h1>
          <dl className="facts">
            <div>
              <dt>Use by</dt>
              <dd>{view.expiresOn ?? 'not stated'}</dd>
            </div>
            <div>
              <dt>Certificate</dt>
              <dd>{view.certificate ?? 'none stated'}</dd>
            </div>
            <div>
              <dt>Repairs</dt>
              <dd>{repairs.shown.filter((one) => one.isUsed).length}</dd>
            </div>
            <div>
              <dt>Attempts</dt>
              <dd>{attempts}</dd>
            </div>
          </dl>
        </div>
        <div className="stack tight">
          <StandingMark standing={view.standing} />
          <div className="row">
            <Link className="button plain" href={pathOf('batches', stream)}>
              The batch
            </Link>
            <a className="button plain" href={`/api/trace/batch/${encodeURIComponent(name)}.csv`} download>
              CSV
            </a>
          </div>
        </div>
      </div>
      {view.recall ? (
        <div className="note question-note">
          <strong>Recalled: {view.recall.reason}</strong>
          <span>
            By {view.recall.by}. Every result that relies on it is in question until a decision is recorded for its
            repair, even when it is “no effect”.
          </span>
        </div>
      ) : null}
      <section className="sheet">
        <div className="sheet-head">
          <h2>Mass balance</h2>
          <span className="quiet small">received = used + wasted + in store</span>
        </div>
        <BalanceStrip balance={view.balance} received={view.received} />
      </section>
      <TracedRepairs reading={reading} view={view} repairs={repairs.shown} />
      <section className="sheet">
        <h2>Every use</h2>
        {uses.shown.length === 0 ? (
          <EmptyNote title="It was used in no repair that you may read." />
        ) : (
          <UseTable as="batch" uses={uses.shown} label={`Uses of batch ${view.number}`} />
        )}
        <HiddenUses count={uses.hiddenCount} />
      </section>
      <section className="sheet">
        <h2>Receipt, movements, quarantine and recall</h2>
        <EventTrail events={view.movements} label={`Movements of batch ${view.number}`} />
      </section>
    </main>
  )
}
