import type { RepairState } from '@/lib/domain/fold/repair-state'
import { type SurfaceMapOf, surfaceMapsOf } from '@/lib/domain/pictures/surface-map-of'
import { surfaceMapPicture } from '@/lib/domain/pictures/surface-map-picture'
import { showReading } from '@/lib/domain/reading'
import { TwoFormats } from './two-formats'

/** One grid drawn on the unrolled pipe, with the table beside it for who cannot see it. */
export function SurfaceMap({ map, href }: { map: SurfaceMapOf; href: string }) {
  const numbers = new Map(map.readings.map((one) => [one.mark, one.reading]))
  const { verdictAt } = map
  return (
    <>
      <TwoFormats draw={(format) => surfaceMapPicture(map, format)} markHref={() => href} />
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
    point.attempts.flatMap((attempt) => surfaceMapsOf(state, attempt).map((map) => ({ map, point }))),
  )
  const latest = [...new Map(all.map((one) => [one.map.quantity, one])).values()].reverse()
  return (
    <>
      {latest.map(({ map, point }) => (
        <section key={map.quantity} className="sheet">
          <div className="sheet-head">
            <h2>
              {map.title}
              {point.attempts.length > 1 ? `, attempt ${map.attempt}` : ''}
            </h2>
            <span className="quiet">{map.limit ?? 'no limit in the specification'}</span>
          </div>
          <SurfaceMap
            map={map}
            href={`/repairs/${encodeURIComponent(state.number)}/points/${point.no}?attempt=${map.attempt}#${map.fact}`}
          />
        </section>
      ))}
    </>
  )
}
