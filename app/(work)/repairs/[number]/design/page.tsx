import Link from 'next/link'
import { notFound, redirect } from 'next/navigation'
import { DesignApproval } from '@/app/_parts/design-approval'
import { DesignEquations } from '@/app/_parts/design-equations'
import { PrintButton } from '@/app/_parts/design-print'
import { DesignAsFound, DesignHead, DesignNeighbours, DesignSensitivity } from '@/app/_parts/design-sections'
import { ComparedTable, EnvelopeTable, InputTable } from '@/app/_parts/design-tables'
import { FORMS_TO_SETTLE } from '@/lib/domain/design/design-sheet'
import { loadDesignView } from '@/lib/server/views/design-view'
import { openReadingDesk } from '@/lib/server/views/reading-desk'

type Props = { params: Promise<{ number: string }> }

export async function generateMetadata({ params }: Props) {
  return { title: `Design sheet ${decodeURIComponent((await params).number)}` }
}

export default async function DesignPage({ params }: Props) {
  const reading = await openReadingDesk()
  if (!reading) redirect('/sign-in')
  const view = await loadDesignView(reading, decodeURIComponent((await params).number))
  if (!view) notFound()
  const { state, sheet, names } = view
  return (
    <main className="page design-page" id="main">
      <DesignHead view={view}>
        <Link className="button plain no-print" href={`/repairs/${encodeURIComponent(state.number)}/quantities`}>
          Quantities
        </Link>
        <PrintButton />
      </DesignHead>
      <div className="design-flow">
        <div className="two">
          <section className="sheet">
            <div className="sheet-head">
              <h2>Computed</h2>
              <span className="quiet small">{sheet.choices.edition ?? 'no edition of a standard is named'}</span>
            </div>
            <p className={sheet.governing.isKnown ? 'note' : 'note warn'}>{sheet.governing.text}</p>
            <p className="quiet small">{FORMS_TO_SETTLE}</p>
            <DesignEquations equations={sheet.equations} />
          </section>
          <div className="stack first-on-phone">
            <section className="sheet">
              <h2>Asked of the engineer</h2>
              {view.asks.length === 0 ? (
                <p className="quiet">Nothing is open on this sheet.</p>
              ) : (
                <ul className="plain-list">
                  {view.asks.map((one) => (
                    <li key={one}>{one}</li>
                  ))}
                </ul>
              )}
            </section>
            <DesignNeighbours view={view} />
            <section className="sheet">
              <h2>Recorded against computed</h2>
              <ComparedTable rows={sheet.compared} />
              {sheet.chosenBecause ? (
                <p className="small">
                  <strong>Why more is chosen:</strong> {sheet.chosenBecause}
                </p>
              ) : null}
            </section>
            <section className="sheet">
              <h2>As found against the design</h2>
              <EnvelopeTable rows={sheet.envelope} />
            </section>
            <DesignApproval view={view} />
          </div>
        </div>
        <DesignSensitivity sheet={sheet} />
        <div className="two">
          <section className="sheet goes-in">
            <h2>What goes in</h2>
            <InputTable inputs={sheet.inputs} names={names} number={state.number} />
          </section>
          <DesignAsFound view={view} />
        </div>
      </div>
    </main>
  )
}
