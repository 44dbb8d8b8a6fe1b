import type { ReactNode } from 'react'
import { StatusMark } from '@/app/_ui/status-mark'
import { showSigned } from '@/lib/domain/decimal'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { showReading, showReadingUnit } from '@/lib/domain/reading'

/** What the repair is, where it is, and how it stands. */
export function RepairHead({ state, children }: { state: RepairState; children?: ReactNode }) {
  const { body } = state.opened
  const open = state.nonconformances.filter((one) => one.isOpen).length
  return (
    <div className="page-head">
      <div>
        <p className="eyebrow">
          {body.line} {body.lineTitle}, {body.datum} {showSigned(body.stationFromDatum)} mm, {body.clock} o’clock
        </p>
        <h1>Repair {state.number}</h1>
        <dl className="facts">
          {state.design ? (
            <div>
              <dt>Outside diameter × wall</dt>
              <dd>
                {showReading(state.design.designDiameter)} × {showReadingUnit(state.design.designWall)}
              </dd>
            </div>
          ) : null}
          {state.design ? (
            <div>
              <dt>Design</dt>
              <dd>
                {showReadingUnit(state.design.designPressure)}, {showReadingUnit(state.design.designTemp)}
              </dd>
            </div>
          ) : null}
          {state.acceptance ? (
            <div>
              <dt>Life, next inspection</dt>
              <dd>
                {state.acceptance.lifeYears} yr, {state.acceptance.nextInspectionOn}
              </dd>
            </div>
          ) : null}
          {state.specification ? (
            <div>
              <dt>Specification</dt>
              <dd>
                {state.specification.body.number} rev {state.specification.revision}
              </dd>
            </div>
          ) : null}
          <div>
            <dt>Arrest and wrap</dt>
            <dd>
              {body.arrest}; {body.wrap}
            </dd>
          </div>
        </dl>
      </div>
      <div className="stack tight head-state">
        <StatusMark status={state.status} />
        <span className="quiet small">
          {open > 0 ? `${open} ${open === 1 ? 'nonconformance' : 'nonconformances'} open` : 'no nonconformance open'}
          {state.revisionDue && state.issues.length > 0
            ? `, dossier rev ${(state.issues.at(-1)?.fact.body.revision ?? 0) + 1} due`
            : ''}
        </span>
        <div className="row">{children}</div>
      </div>
    </div>
  )
}
