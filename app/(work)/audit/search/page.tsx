import Link from 'next/link'
import { offsetOf, requireDesk } from '@/app/_desk/require-desk'
import { EmptyNote } from '@/app/_ui/empty-note'
import { loadAuditSearch, type SearchParams } from '@/lib/server/views/audit-search-view'
import { AuditNav } from '../audit-nav'
import { AuditRefused } from '../audit-refused'
import { ReachNote } from '../reach-note'
import { SearchForm } from './search-form'
import { TrailTable } from './trail-table'

export const metadata = { title: 'Search of the trail' }

type Asked = Record<string, string | string[] | undefined>
const FIELDS = ['person', 'batch', 'instrument', 'repair', 'act', 'from', 'to', 'basis'] as const

export default async function AuditSearchPage({ searchParams }: { searchParams: Promise<Asked> }) {
  const reading = await requireDesk()
  const asked = await searchParams
  const params = paramsOf(asked)
  const page = typeof asked.page === 'string' && /^[1-9][0-9]{0,6}$/.test(asked.page) ? Number(asked.page) : 1
  const loaded = await loadAuditSearch(reading, params, page, offsetOf(reading))
  if (!loaded.ok) return <AuditRefused title="Search of the trail" fault={loaded.error} />
  const { count, lines, pageCount, faults, options, reach } = loaded.value
  const query = (more: Record<string, string> = {}) =>
    new URLSearchParams({ ...params, ...more } as Record<string, string>)
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">Audit room</p>
          <h1>Search of the trail</h1>
        </div>
        <AuditNav at="/audit/search" />
      </div>
      <ReachNote reach={reach} />
      <SearchForm params={params} options={options} faults={faults} />
      <section className="sheet" aria-label="Found">
        <div className="sheet-head">
          <h2>
            {count} {count === 1 ? 'fact' : 'facts'}
          </h2>
          <div className="row">
            <span className="quiet small">in order of receipt</span>
            {count > 0 ? (
              <a className="button plain" href={`/api/audit/search?${query()}`} download>
                CSV of all {count}
              </a>
            ) : null}
          </div>
        </div>
        {lines.length === 0 ? (
          <EmptyNote title={faults.length > 0 ? 'Nothing was searched.' : 'No fact answers to this.'}>
            <span>Leave fields empty to ask for less.</span>
          </EmptyNote>
        ) : (
          <TrailTable lines={lines} />
        )}
        {pageCount > 1 ? (
          <nav className="row between pages no-print" aria-label="Pages">
            {loaded.value.page > 1 ? (
              <Link className="button plain" href={`/audit/search?${query({ page: String(loaded.value.page - 1) })}`}>
                Earlier
              </Link>
            ) : (
              <span />
            )}
            <span className="quiet">
              Page {loaded.value.page} of {pageCount}
            </span>
            {loaded.value.page < pageCount ? (
              <Link className="button plain" href={`/audit/search?${query({ page: String(loaded.value.page + 1) })}`}>
                Later
              </Link>
            ) : (
              <span />
            )}
          </nav>
        ) : null}
      </section>
    </main>
  )
}

function paramsOf(asked: Asked): SearchParams {
  return Object.fromEntries(
    FIELDS.flatMap((field) => {
      const value = asked[field]
      return typeof value === 'string' && value.trim() !== '' ? [[field, value.slice(0, 200)]] : []
    }),
  )
}
