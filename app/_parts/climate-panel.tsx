import type { AttemptState, RepairState } from '@/lib/domain/fold/repair-state'
import { showMoment } from '@/lib/domain/time'
import { climateStanding } from '@/lib/domain/working/climate-standing'
import { CountDown } from './count-down'

/** Dew point and margin at the coldest place of the latest climate reading, with its validity counting down. */
export function ClimatePanel({ state, attempt, nowMs }: { state: RepairState; attempt: AttemptState; nowMs: number }) {
  const standing = climateStanding(state, attempt)
  if (!standing) return null
  const { coldest, dewPointC, endsAt } = standing
  return (
    <section className="sheet">
      <div className="sheet-head">
        <h2>Climate as last read</h2>
        <span className="quiet">{showMoment(standing.takenAt)}</span>
      </div>
      <div className="limits">
        <div>
          dew point, computed
          <b>{dewPointC === null ? `not computed: ${standing.refusal}` : `${dewPointC.toFixed(1)} °C`}</b>
        </div>
        <div>
          coldest steel
          <b>{coldest ? `${coldest.shown} at ${coldest.clock} o’clock` : 'no number'}</b>
        </div>
        <div>
          margin there
          <b>{coldest?.margin ? `${coldest.margin} K` : 'unknown'}</b>
        </div>
        <div>
          valid
          <b>{endsAt ? <CountDown endsAt={endsAt} nowMs={nowMs} /> : 'the specification states no time'}</b>
        </div>
      </div>
      {standing.validFor ? <p className="quiet small">{standing.validFor}</p> : null}
    </section>
  )
}
