import { PictureSvg } from '@/app/_ui/picture-svg'
import type { AttemptState, RepairState } from '@/lib/domain/fold/repair-state'
import { surfaceMapPicture } from '@/lib/domain/pictures/surface-map-picture'
import { verdictsByMark } from '@/lib/domain/pictures/verdicts-by-mark'
import { showReading, type Unit } from '@/lib/domain/reading'
import type { Grid, MarkedReading } from '@/lib/domain/records/common'

export type MapOf = {
  title: string
  quantity: string
  attempt: AttemptState
  grid: Grid
  readings: MarkedReading[]
  unit: Unit
  limit: string | null
}

/** Every grid of readings in an attempt that can be drawn on the unrolled pipe. */
export function mapsOf(attempt: AttemptState): MapOf[] {
  return attempt.records.flatMap(({ record, overruledBy }) => {
    if (overruledBy) return []
    const of =
      record.type === 'hardness'
        ? {
            title: 'Hardness',
            quantity: 'hardness',
            readings: record.readings,
            grid: record.grid,
            unit: record.scale as Unit,
          }
        : record.type === 'thickness'
          ? {
              title: 'Laminate thickness',
              quantity: 'laminate-thickness',
              readings: record.readings,
              grid: record.grid,
              unit: 'mm' as Unit,
            }
          : record.type === 'defect'
            ? { title: 'Wall as found', quantity: 'wall', readings: record.wall, grid: record.grid, unit: 'mm' as Unit }
            : null
    if (!of || of.readings.length === 0) return []
    const each = attempt.criteria.find(
      ({ criterion: { rule } }) => rule.kind === 'each' && rule.quantity === of.quantity,
    )
    return [{ ...of, attempt, limit: each ? each.limit : null }]
  })
}

/** One grid drawn on the unrolled pipe, with the table beside it for who cannot see it. */
export function SurfaceMap({ map, href }: { map: MapOf; href?: (mark: string) => string }) {
  const numbers = new Map(map.readings.map((one) => [one.mark, one.reading]))
  const verdictAt = verdictsByMark(map.attempt, map.quantity, (mark) => numbers.get(mark)?.kind === 'number')
  return (
    <>
      <PictureSvg
        picture={surfaceMapPicture({
          title: map.title,
          grid: map.grid,
          readings: map.readings,
          verdictAt,
          unit: map.unit,
          limit: map.limit,
        })}
        {...(href ? { markHref: href } : {})}
      />
      <details>
        <summary className="fold-head plain quiet small">The same as a table</summary>
        <div className="scroll-x">
          <table>
            <thead>
              <tr>
                <th>clock</th>
                {map.grid.stations.map((station) => (
                  <th key={station.name} className="num">
                    {station.name} {showReading(station.fromLeak).replace('-', '−')}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {map.grid.clocks.map((clock) => (
                <tr key={clock}>
                  <th scope="row">{clock}</th>
                  {map.grid.stations.map((station) => {
                    const mark = `${station.name}-${clock}`
                    const reading = numbers.get(mark)
                    const isLow = verdictAt(mark) === 'fail'
                    return (
                      <td key={station.name} className={`num ${isLow ? 'fail' : ''}`}>
                        {reading ? showReading(reading) : '–'}
                        {isLow ? ' ◆' : ''}
                      </td>
                    )
                  })}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </>
  )
}

/** The latest map of each kind on the repair's page. */
export function RepairMaps({ state }: { state: RepairState }) {
  const all = state.points.flatMap((point) =>
    point.attempts.flatMap((attempt) => mapsOf(attempt).map((map) => ({ map, point }))),
  )
  const latest = [...new Map(all.map((one) => [one.map.quantity, one])).values()].reverse()
  return (
    <>
      {latest.map(({ map, point }) => (
        <section key={map.quantity} className="sheet">
          <div className="sheet-head">
            <h2>
              {map.title}
              {point.attempts.length > 1 ? `, attempt ${map.attempt.attempt}` : ''}
            </h2>
            <span className="quiet">{map.limit ?? 'no limit in the specification'}</span>
          </div>
          <SurfaceMap
            map={map}
            href={() => `/repairs/${state.number}/points/${point.no}?attempt=${map.attempt.attempt}`}
          />
        </section>
      ))}
    </>
  )
}
