import Link from 'next/link'
import { notFound } from 'next/navigation'
import { pathOf, requireDesk, streamAt } from '@/app/_desk/require-desk'
import { EmptyNote } from '@/app/_ui/empty-note'
import { mayRead } from '@/lib/server/views/reading-desk'
import { type TracedSource, traceRepairView } from '@/lib/server/views/trace-repair-view'

const HEADS: Record<TracedSource['kind'], string> = { batch: 'Batches', instrument: 'Instruments', person: 'People' }

export default async function TraceRepairPage({ params }: { params: Promise<{ name: string }> }) {
  const reading = await requireDesk()
  const stream = streamAt('repair', (await params).name)
  const view = await traceRepairView(reading.desk.store, reading.actor.tenant, stream.slice('repair:'.length))
  if (!view || !mayRead(reading, view.project)) notFound()
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">{view.line}</p>
          <h1>What stands behind {view.number}</h1>
        </div>
        <div className="row">
          <Link className="button plain" href={`/repairs/${view.number}`}>
            The repair
          </Link>
          <a className="button plain" href={`/api/trace/repair/${encodeURIComponent(view.number)}.csv`} download>
            CSV
          </a>
        </div>
      </div>
      {view.sources.length === 0 ? <EmptyNote title="Nothing was used or recorded on it yet." /> : null}
      {(['batch', 'instrument', 'person'] as const).map((kind) => {
        const sources = view.sources.filter((one) => one.kind === kind)
        return sources.length === 0 ? null : (
          <section className="sheet" key={kind}>
            <h2>{HEADS[kind]}</h2>
            <table className="cards">
              <thead>
                <tr>
                  <th>{kind === 'person' ? 'Name' : 'Number'}</th>
                  <th>
                    {kind === 'batch'
                      ? 'Certificate'
                      : kind === 'instrument'
                        ? 'Certificate valid then'
                        : 'Qualification'}
                  </th>
                  <th>{kind === 'person' ? 'Took part at' : 'Used at'}</th>
                </tr>
              </thead>
              <tbody>
                {sources.map((one) => (
                  <tr key={one.of}>
                    <th scope="row">
                      <Link href={pathOf(`trace/${kind}`, one.of)}>{one.name}</Link>
                      <br />
                      <span className="quiet small">{one.what}</span>
                    </th>
                    <td data-label="">
                      {one.papers.map((paper) => (
                        <p key={paper}>{paper}</p>
                      ))}
                    </td>
                    <td data-label="Used at">
                      {placesOf(one).map((place) => (
                        <p key={place.text} className="small">
                          {place.href ? (
                            <Link href={`/repairs/${view.number}${place.href}`}>{place.text}</Link>
                          ) : (
                            place.text
                          )}
                        </p>
                      ))}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
        )
      })}
    </main>
  )
}

function placesOf(source: TracedSource): { text: string; href: string }[] {
  const byPlace = new Map<string, { text: string; href: string; roles: Set<string> }>()
  for (const use of source.uses) {
    const key = `${use.point}/${use.attempt}`
    const known = byPlace.get(key) ?? {
      text: `${use.point} ${use.pointTitle}, attempt ${use.attempt}`,
      href: `/points/${use.point}?attempt=${use.attempt}`,
      roles: new Set<string>(),
    }
    known.roles.add(`${use.role}${use.into ? ` ${use.into}` : ''}${use.amount ? ` ${use.amount}` : ''}`)
    byPlace.set(key, known)
  }
  return [...byPlace.values()].map(({ text, href, roles }) => ({ text: `${text}: ${[...roles].join(', ')}`, href }))
}
