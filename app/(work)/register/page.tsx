import { requireDesk } from '@/app/_desk/require-desk'
import { EmptyNote } from '@/app/_ui/empty-note'
import { loadNames } from '@/lib/server/views/reading-desk'
import { loadRegisterView } from '@/lib/server/views/register-view'
import { RegisterRowView } from './register-row-view'

export const metadata = { title: 'Register of repairs' }

type Search = { line?: string; state?: string; show?: string }

export default async function RegisterPage({ searchParams }: { searchParams: Promise<Search> }) {
  const reading = await requireDesk()
  const view = await loadRegisterView(reading, await loadNames(reading.desk))
  const search = await searchParams
  const lineNames = [...new Set(view.lines.map((one) => one.line))].sort()
  const states = [...new Set(view.lines.map((one) => one.status))].sort()
  const shown = view.lines.filter(
    (one) =>
      (!search.line || one.line === search.line) &&
      (!search.state || one.status === search.state) &&
      (search.show !== 'due' || one.due === 'overdue' || one.due === 'due' || one.due === 'life ended') &&
      (search.show !== 'question' || one.inQuestion) &&
      (search.show !== 'concession' || one.hasConcession || one.conditions.length > 0),
  )
  const count = (due: string) => view.lines.filter((one) => one.due === due).length
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">One row a repair, for its whole life</p>
          <h1>Register of repairs</h1>
          <dl className="facts">
            <div>
              <dt>Repairs</dt>
              <dd>{view.lines.length}</dd>
            </div>
            <div>
              <dt>Overdue</dt>
              <dd className={count('overdue') > 0 ? 'fail' : ''}>{count('overdue')}</dd>
            </div>
            <div>
              <dt>Due within 60 days</dt>
              <dd>{count('due')}</dd>
            </div>
            <div>
              <dt>In question</dt>
              <dd className={view.lines.some((one) => one.inQuestion) ? 'question' : ''}>
                {view.lines.filter((one) => one.inQuestion).length}
              </dd>
            </div>
          </dl>
        </div>
      </div>
      <form className="filters no-print" method="get" aria-label="Which rows">
        <div className="field">
          <label htmlFor="line">Line</label>
          <select id="line" name="line" defaultValue={search.line ?? ''}>
            <option value="">All lines</option>
            {lineNames.map((line) => (
              <option key={line}>{line}</option>
            ))}
          </select>
        </div>
        <div className="field">
          <label htmlFor="state">State</label>
          <select id="state" name="state" defaultValue={search.state ?? ''}>
            <option value="">All states</option>
            {states.map((state) => (
              <option key={state}>{state}</option>
            ))}
          </select>
        </div>
        <div className="field">
          <label htmlFor="show">Only</label>
          <select id="show" name="show" defaultValue={search.show ?? ''}>
            <option value="">Everything</option>
            <option value="due">Due or overdue</option>
            <option value="question">In question</option>
            <option value="concession">Concession or condition</option>
          </select>
        </div>
        <button className="button plain" type="submit">
          Show
        </button>
      </form>
      {view.overlaps.map((one) => (
        <p className="note warn" key={`${one.a}${one.b}`}>
          <strong>
            {one.a} and {one.b} share {one.sharedMm} mm of line {one.line}.
          </strong>{' '}
          <span>Bands over or beside each other are a design matter.</span>
        </p>
      ))}
      {view.lines.length === 0 ? (
        <EmptyNote title="No repair is on the register that you may read.">
          <span>A repair stands here from the day it is opened.</span>
        </EmptyNote>
      ) : null}
      {view.lines.length > 0 && shown.length === 0 ? <EmptyNote title="No repair fits this choice." /> : null}
      {shown.length > 0 ? (
        <ol className="register" aria-label="Repairs">
          {shown.map((line) => (
            <RegisterRowView key={line.repair} line={line} />
          ))}
        </ol>
      ) : null}
    </main>
  )
}
