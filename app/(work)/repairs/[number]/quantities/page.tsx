import Link from 'next/link'
import { notFound, redirect } from 'next/navigation'
import { DesignEquations } from '@/app/_parts/design-equations'
import { PrintButton } from '@/app/_parts/design-print'
import { InputTable } from '@/app/_parts/design-tables'
import { QuantityAsk } from '@/app/_parts/quantity-ask'
import { QuantityTable } from '@/app/_parts/quantity-table'
import { loadQuantityView } from '@/lib/server/views/quantity-view'
import { openReadingDesk } from '@/lib/server/views/reading-desk'

type Props = {
  params: Promise<{ number: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

export async function generateMetadata({ params }: Props) {
  return { title: `Quantities ${decodeURIComponent((await params).number)}` }
}

export default async function QuantitiesPage({ params, searchParams }: Props) {
  const reading = await openReadingDesk()
  if (!reading) redirect('/sign-in')
  const typed = Object.fromEntries(
    Object.entries(await searchParams).flatMap(([key, value]) => (typeof value === 'string' ? [[key, value]] : [])),
  )
  const view = await loadQuantityView(reading, decodeURIComponent((await params).number), typed)
  if (!view) notFound()
  const { state, sheet, names } = view
  const { body } = state.opened
  return (
    <main className="page design-page" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            <Link href={`/repairs/${encodeURIComponent(state.number)}`}>‹ {state.number}</Link> {body.line}{' '}
            {body.lineTitle}; {body.arrest}; {body.wrap}
          </p>
          <h1>Quantities for stores</h1>
        </div>
        <div className="row no-print">
          <Link className="button plain" href={`/repairs/${encodeURIComponent(state.number)}/design`}>
            Design sheet
          </Link>
          <PrintButton />
        </div>
      </div>
      <div className="stack">
        <section className="sheet">
          <div className="sheet-head">
            <h2>To draw, and used so far</h2>
            <span className="quiet small">
              {state.design
                ? `by design sheet ${state.design.sheetNo} rev ${state.design.revision}`
                : 'no design sheet is recorded'}
            </span>
          </div>
          <QuantityTable lines={sheet.lines} />
        </section>
        {sheet.asked.length > 0 ? <QuantityAsk asked={sheet.asked} number={state.number} /> : null}
        <div className="two design-columns">
          <section className="sheet">
            <h2>Computed</h2>
            <DesignEquations equations={sheet.equations} />
          </section>
          <section className="sheet">
            <h2>What goes in</h2>
            <InputTable inputs={sheet.inputs} names={names} number={state.number} />
          </section>
        </div>
      </div>
    </main>
  )
}
