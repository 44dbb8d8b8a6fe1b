import Link from 'next/link'
import { notFound } from 'next/navigation'
import { BarredNote } from '@/app/_desk/barred-note'
import { csvHref, momentsOf, PeriodForm, periodOf } from '@/app/_desk/period-form'
import { onlyReadable } from '@/app/_desk/readable-repairs'
import { mayReadStores, offsetOf, pathOf, requireDesk, streamAt } from '@/app/_desk/require-desk'
import { HiddenUses, UseTable } from '@/app/_desk/use-table'
import { EmptyNote } from '@/app/_ui/empty-note'
import { showMoment } from '@/lib/domain/time'
import { loadRepairStates } from '@/lib/server/views/repair-list-view'
import { tracePersonView } from '@/lib/server/views/trace-person-view'

export default async function TracePersonPage({
  params,
  searchParams,
}: {
  params: Promise<{ name: string }>
  searchParams: Promise<{ from?: string; to?: string }>
}) {
  const reading = await requireDesk()
  if (!mayReadStores(reading))
    return <BarredNote title="Trace of a person" forWhom="everyone with a role in a project" />
  const stream = streamAt('person', (await params).name)
  const name = stream.slice('person:'.length)
  const period = periodOf(await searchParams)
  const view = await tracePersonView(
    reading.desk.store,
    reading.actor.tenant,
    name,
    momentsOf(period, offsetOf(reading)),
  )
  if (!view) notFound()
  const uses = await onlyReadable(reading, view.uses)
  const readable = new Set((await loadRepairStates(reading)).map((state) => state.number))
  const acts = view.acts.filter(
    (act) => !act.where.startsWith('repair ') || readable.has(act.where.slice('repair '.length).split(',')[0] ?? ''),
  )
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            {view.title}, {view.party}
          </p>
          <h1>What {view.name} did</h1>
        </div>
        <div className="row">
          <Link className="button plain" href={pathOf('people', stream)}>
            The person
          </Link>
          <a className="button plain" href={csvHref('person', name, period, offsetOf(reading))} download>
            CSV
          </a>
        </div>
      </div>
      <PeriodForm period={period} />
      <section className="sheet">
        <div className="sheet-head">
          <h2>Work in repairs</h2>
          <span className="quiet small">each with the qualification of that day</span>
        </div>
        {uses.shown.length === 0 ? (
          <EmptyNote title="No work in this period." />
        ) : (
          <UseTable
            as="person"
            uses={uses.shown}
            label={`Work of ${view.name}`}
            columns={[
              {
                head: 'Qualification then',
                cell: (line) =>
                  line.qualifications.length > 0 ? (
                    line.qualifications.map((text) => (
                      <p key={text} className="small">
                        {text}
                      </p>
                    ))
                  ) : (
                    <span className="quiet">none on that day</span>
                  ),
              },
            ]}
          />
        )}
        <HiddenUses count={uses.hiddenCount} />
      </section>
      <section className="sheet">
        <h2>Entries, signatures and decisions</h2>
        <p className="count-line">{acts.length} in this period</p>
        <div className="scroll-x">
          <table className="cards tight-table">
            <thead>
              <tr>
                <th>When</th>
                <th>What</th>
                <th>Where</th>
                <th>As</th>
              </tr>
            </thead>
            <tbody>
              {acts.slice(0, 500).map((act) => (
                <tr key={act.fact}>
                  <td className="nowrap">{showMoment(act.at)}</td>
                  <td>{act.what}</td>
                  <td data-label="Where">{act.where}</td>
                  <td data-label="As">{act.as}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        {acts.length > 500 ? (
          <p className="quiet small">The first 500 are shown; choose a shorter period, or take the CSV.</p>
        ) : null}
      </section>
    </main>
  )
}
