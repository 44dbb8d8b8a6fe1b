import Link from 'next/link'
import { notFound } from 'next/navigation'
import { BarredNote } from '@/app/_desk/barred-note'
import { csvHref, momentsOf, PeriodForm, periodOf } from '@/app/_desk/period-form'
import { onlyReadable } from '@/app/_desk/readable-repairs'
import { mayReadStores, offsetOf, pathOf, requireDesk, streamAt } from '@/app/_desk/require-desk'
import { StandingMark } from '@/app/_desk/standing-mark'
import { HiddenUses, UseTable } from '@/app/_desk/use-table'
import { EmptyNote } from '@/app/_ui/empty-note'
import { FactId } from '@/lib/domain/facts/fact'
import { traceInstrumentView } from '@/lib/server/views/trace-instrument-view'
import { ImpactSearch } from './impact-search'

type Search = { from?: string; to?: string; impact?: string }

export default async function TraceInstrumentPage({
  params,
  searchParams,
}: {
  params: Promise<{ name: string }>
  searchParams: Promise<Search>
}) {
  const reading = await requireDesk()
  if (!mayReadStores(reading))
    return <BarredNote title="Trace of an instrument" forWhom="everyone with a role in a project" />
  const stream = streamAt('instrument', (await params).name)
  const name = stream.slice('instrument:'.length)
  const search = await searchParams
  const period = periodOf(search)
  const cause = FactId.safeParse(search.impact)
  const view = await traceInstrumentView(
    reading.desk.store,
    reading.actor.tenant,
    name,
    momentsOf(period, offsetOf(reading)),
    cause.success ? cause.data : undefined,
  )
  if (!view) notFound()
  const uses = await onlyReadable(reading, view.uses)
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">{view.kind}</p>
          <h1>Readings with {view.number}</h1>
        </div>
        <div className="stack tight">
          <StandingMark standing={view.standing} />
          <div className="row">
            <Link className="button plain" href={pathOf('instruments', stream)}>
              The instrument
            </Link>
            <a className="button plain" href={csvHref('instrument', name, period, offsetOf(reading))} download>
              CSV
            </a>
          </div>
        </div>
      </div>
      {view.impact ? (
        <ImpactSearch reading={reading} stream={stream} impact={view.impact} causes={view.causes} />
      ) : null}
      <section className="sheet">
        <div className="sheet-head">
          <h2>Readings and other uses</h2>
          <span className="quiet small">each with the certificate valid on that day</span>
        </div>
        <PeriodForm period={period} />
        {uses.shown.length === 0 ? (
          <EmptyNote
            title={period.from || period.to ? 'No use in this period.' : 'It was used in no repair that you may read.'}
          />
        ) : (
          <UseTable
            as="instrument"
            uses={uses.shown}
            label={`Uses of ${view.number}`}
            columns={[
              {
                head: 'Certificate then',
                cell: (line) =>
                  line.certificate ? (
                    <>
                      {line.certificate} <span className="quiet small nowrap">to {line.certificateTo}</span>
                    </>
                  ) : (
                    <strong className="fail">none in force</strong>
                  ),
              },
              {
                head: 'Found',
                cell: (line) =>
                  line.found.length === 0 ? (
                    <span className="quiet">see the record</span>
                  ) : (
                    line.found.map((text) => (
                      <p key={text} className="small">
                        {text}
                      </p>
                    ))
                  ),
              },
            ]}
          />
        )}
        <HiddenUses count={uses.hiddenCount} />
      </section>
    </main>
  )
}
