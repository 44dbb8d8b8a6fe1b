import Link from 'next/link'
import { redirect } from 'next/navigation'
import { BarredNote } from '@/app/_desk/barred-note'
import { mayReadStores, pathOf, requireDesk } from '@/app/_desk/require-desk'
import { EmptyNote } from '@/app/_ui/empty-note'
import { searchTraces } from '@/lib/server/views/trace-search-view'

export const metadata = { title: 'Trace' }

export default async function TracePage({ searchParams }: { searchParams: Promise<{ q?: string }> }) {
  const reading = await requireDesk()
  if (!mayReadStores(reading)) return <BarredNote title="Trace" forWhom="everyone with a role in a project" />
  const asked = (await searchParams).q ?? ''
  const hits = await searchTraces(reading, asked)
  const exact = hits.filter((hit) => hit.isExact)
  const only = exact.length === 1 ? exact[0] : undefined
  if (only) redirect(pathOf(`trace/${only.kind}`, only.stream))
  return (
    <main className="page narrow stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">Both ways: from a thing to its repairs, from a repair to its things</p>
          <h1>Trace</h1>
        </div>
      </div>
      <search>
        <form className="filters" method="get">
          <div className="field" style={{ flex: '1 1 260px' }}>
            <label htmlFor="q">Number or name</label>
            <span className="hint">A batch, an instrument or its certificate, a person, a repair or its line</span>
            <input id="q" name="q" defaultValue={asked} autoComplete="off" autoCapitalize="characters" />
          </div>
          <button className="button" type="submit">
            Trace
          </button>
        </form>
      </search>
      {asked.trim() !== '' && hits.length === 0 ? (
        <EmptyNote title={`Nothing here goes by “${asked.trim()}”.`}>
          <span>Check the number against the label; parts of a number find it too.</span>
        </EmptyNote>
      ) : null}
      {hits.length > 0 ? (
        <section className="sheet" aria-label="Found">
          <p className="count-line">{hits.length} found</p>
          <ul className="plain-list">
            {hits.slice(0, 60).map((hit) => (
              <li key={hit.stream} style={{ padding: 0 }}>
                <Link className="link-row" href={pathOf(`trace/${hit.kind}`, hit.stream)}>
                  <strong>{hit.number}</strong>
                  <span className="quiet small">
                    {hit.kind} · {hit.what}
                  </span>
                </Link>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      {asked.trim() === '' ? (
        <ul className="plain-list row-links">
          <li>
            <Link href="/batches">Batches in the store</Link>
          </li>
          <li>
            <Link href="/instruments">Instruments</Link>
          </li>
          <li>
            <Link href="/people">People</Link>
          </li>
          <li>
            <Link href="/register">Register of repairs</Link>
          </li>
        </ul>
      ) : null}
    </main>
  )
}
