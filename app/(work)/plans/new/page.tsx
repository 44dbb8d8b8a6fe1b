import Link from 'next/link'
import { BarredNote } from '@/app/_desk/barred-note'
import { mayAct, requireDesk } from '@/app/_desk/require-desk'
import { streamOfParam } from '@/app/_desk/stream-name'
import { planTemplate } from '@/lib/domain/templates/plan-template'
import { loadPlanRows } from '@/lib/server/views/plan-list-view'
import { loadPlanView } from '@/lib/server/views/plan-view'
import { PlanEditor } from '../plan-editor'

export const metadata = { title: 'New plan' }

export default async function NewPlanPage({
  searchParams,
}: {
  searchParams: Promise<{ from?: string; template?: string }>
}) {
  const reading = await requireDesk()
  if (!mayAct(reading, 'draft specification or plan'))
    return <BarredNote title="New plan" forWhom="inspectors and engineers" />
  const { from, template } = await searchParams
  const source = from ? streamOfParam('plan', from) : null
  const copied = source ? await loadPlanView(reading, source) : null
  const rows = await loadPlanRows(reading)
  const start =
    copied?.body ??
    (template === 'tape'
      ? planTemplate('water-activated tape')
      : template === 'wet'
        ? planTemplate('wet lay-up')
        : null)
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">A plan holds no limit; limits are the specification’s</p>
          <h1>New inspection and test plan</h1>
        </div>
      </div>
      <p className="row">
        Start from{' '}
        <Link
          className="button plain"
          href="/plans/new?template=wet"
          aria-current={template === 'wet' ? 'page' : undefined}
        >
          22 points, wet lay-up
        </Link>
        <Link
          className="button plain"
          href="/plans/new?template=tape"
          aria-current={template === 'tape' ? 'page' : undefined}
        >
          22 points, water-activated tape
        </Link>
        {rows.map((row) => (
          <Link
            key={row.stream}
            className="button plain"
            href={`/plans/new?from=${encodeURIComponent(row.stream.slice('plan:'.length))}`}
          >
            {row.number}
          </Link>
        ))}
      </p>
      {start ? (
        <PlanEditor
          key={`${from ?? ''}${template ?? ''}`}
          kind="plan"
          stream={null}
          initial={{ ...start, number: '', title: start.title }}
          heads={[]}
        />
      ) : (
        <p className="note">
          <strong>Choose what to start from.</strong>{' '}
          <span>
            The 22 points are a template: every point, letter, photo and block may be changed before it is issued.
          </span>
        </p>
      )}
    </main>
  )
}
