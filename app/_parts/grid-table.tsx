import { type Reading, showReading } from '@/lib/domain/reading'
import type { Grid } from '@/lib/domain/records/common'

/** Readings over a chalk grid, station against clock position. Marks of `isLow` are marked, not by colour alone. */
export function GridTable({
  grid,
  readings,
  isLow = () => false,
  className,
}: {
  grid: Grid
  readings: readonly { mark: string; reading: Reading }[]
  isLow?: (mark: string) => boolean
  className?: string
}) {
  const byMark = new Map(readings.map((one) => [one.mark, one.reading]))
  return (
    <table className={className}>
      <thead>
        <tr>
          <th>clock</th>
          {grid.stations.map((station) => (
            <th key={station.name} className="num">
              {station.name} {showReading(station.fromLeak).replace('-', '−')}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {grid.clocks.map((clock) => (
          <tr key={clock}>
            <th scope="row">{clock}</th>
            {grid.stations.map((station) => {
              const mark = `${station.name}-${clock}`
              const reading = byMark.get(mark)
              return (
                <td key={station.name} className={`num ${isLow(mark) ? 'fail' : ''}`}>
                  {reading ? showReading(reading) : '–'}
                  {isLow(mark) ? ' ◆' : ''}
                </td>
              )
            })}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
