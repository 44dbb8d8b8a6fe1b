import { FORMS } from '@/lib/capture/forms/form-table'
import { paperForms } from '@/lib/capture/tally/paper-forms'
import type { PaperGround } from '@/lib/capture/tally/paper-marks'
import { showLimit } from '@/lib/domain/judge/show-limit'
import type { TallyView } from '@/lib/server/views/tally-view'
import { MarksMap } from './marks-map'
import { PaperFields } from './paper-field'
import { PaperLog } from './paper-log'
import { SheetFoot } from './sheet-foot'
import { SheetHead } from './sheet-head'

/** Criteria that say nothing to whoever stands at the pipe. */
const OF_THE_OFFICE: ReadonlySet<string> = new Set([
  'instruments-valid',
  'batches-valid',
  'persons-qualified',
  'order-of-facts',
  'photos',
])

/** A tally sheet: what the forms of a point ask, as boxes for a gloved pen. Its number stands on every page. */
export function TallySheet({ view }: { view: TallyView }) {
  const { judge, grid, leakClock } = view.capture
  const { plan } = view.point.point
  const { criteria } = judge.specification.body
  const ground: PaperGround = { criteria, grid, leakClock }
  const forms = paperForms(plan, judge.design)
  const limits = criteria.filter((one) => one.point === plan.no && !OF_THE_OFFICE.has(one.rule.kind))
  const hasGrid = forms.some((form) => form.fields.some((one) => one.kind === 'marks' && one.shape === 'stations'))
  return (
    <table className="tally-sheet">
      <thead>
        <tr>
          <td>
            <p className="tally-running">
              <b>Tally sheet {view.sheet}</b>
              <span>Page ____ of ____</span>
            </p>
          </td>
        </tr>
      </thead>
      <tbody>
        <tr>
          <td>
            <SheetHead view={view} />
            {limits.length > 0 ? (
              <section className="tally-part">
                <h2>Required</h2>
                <ul className="tally-limits">
                  {limits.map((one) => (
                    <li key={one.id}>
                      {one.title}: <b>{showLimit(one, judge)}</b> <i>{one.clause}</i>
                    </li>
                  ))}
                </ul>
              </section>
            ) : null}
            {forms.map((form) => (
              <section key={form.type} className="tally-part">
                <h2>
                  {form.title}
                  {form.isIfDone ? ', if done' : ''}
                  {form.copies > 1 ? `, ${form.copies} times` : ''}
                </h2>
                {form.layout === 'log' ? (
                  <PaperLog form={form} ground={ground} />
                ) : (
                  Array.from({ length: form.copies }, (_, at) => at + 1).map((no) => (
                    <div key={no} className={form.copies > 1 ? 'tally-block' : undefined}>
                      {form.copies > 1 ? (
                        <p className="tally-label">
                          {FORMS[form.type].title} {no}
                        </p>
                      ) : null}
                      <PaperFields fields={form.fields} ground={ground} />
                    </div>
                  ))
                )}
              </section>
            ))}
            {hasGrid && grid ? (
              <section className="tally-part">
                <h2>Map of the marks, in the order of reading</h2>
                <MarksMap grid={grid} leakClock={leakClock} />
              </section>
            ) : null}
            <SheetFoot plan={plan} />
          </td>
        </tr>
      </tbody>
    </table>
  )
}
