import Link from 'next/link'
import { BarredNote } from '@/app/_desk/barred-note'
import { mayAct, requireDesk } from '@/app/_desk/require-desk'
import { streamOfParam } from '@/app/_desk/stream-name'
import { loadSpecificationRows } from '@/lib/server/views/specification-list-view'
import { loadSpecificationView } from '@/lib/server/views/specification-view'
import { SpecificationEditor } from '../specification-editor'

export const metadata = { title: 'New specification' }

export default async function NewSpecificationPage({ searchParams }: { searchParams: Promise<{ from?: string }> }) {
  const reading = await requireDesk()
  if (!mayAct(reading, 'draft specification or plan'))
    return <BarredNote title="New specification" forWhom="inspectors and engineers" />
  const { from } = await searchParams
  const source = from ? streamOfParam('specification', from) : null
  const copied = source ? await loadSpecificationView(reading, source) : null
  const rows = await loadSpecificationRows(reading)
  const initial = copied
    ? { ...copied.body, number: '', title: '' }
    : { number: '', title: '', arrest: [], criteria: [], notes: [] }
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            {copied
              ? `Copied from ${copied.body.number}: check every figure against the new text`
              : 'From an empty sheet'}
          </p>
          <h1>New specification</h1>
        </div>
      </div>
      {rows.length > 0 ? (
        <p className="row">
          Start from{' '}
          {rows.map((row) => (
            <Link
              key={row.stream}
              className="button plain"
              href={`/specifications/new?from=${encodeURIComponent(row.stream.slice('specification:'.length))}`}
            >
              {row.number}
            </Link>
          ))}
        </p>
      ) : null}
      <SpecificationEditor key={from ?? ''} kind="specification" stream={null} initial={initial} heads={[]} />
    </main>
  )
}
