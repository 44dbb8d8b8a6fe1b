import { stationCaption } from '@/lib/capture/mark-shape'
import type { Grid } from '@/lib/domain/records/common'
import { WriteBox } from './write-box'

/** The chalk grid: printed as laid out at point 01, or boxes for stations and clock positions where it is not recorded yet. */
export function PaperGrid({ grid }: { grid: Grid | null }) {
  if (grid)
    return (
      <p className="tally-printed">
        Stations, mm from the leak:{' '}
        {grid.stations.map(({ name }) => `${name} ${stationCaption(grid, name)}`).join(' · ')}. Clock positions in this
        order: {grid.clocks.join(', ')}. Chalk them before the first reading. Where the pipe is marked otherwise, cross
        this out and write how.
      </p>
    )
  return (
    <>
      <p className="tally-printed">Stations by letter, mm from the leak with its sign:</p>
      <span className="tally-input wide">
        {['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H'].map((name) => (
          <WriteBox key={name} no={name} />
        ))}
      </span>
      <p className="tally-printed">Clock positions, in the order of reading:</p>
      <span className="tally-input wide">
        {['1', '2', '3', '4', '5', '6'].map((no) => (
          <WriteBox key={no} no={no} />
        ))}
      </span>
    </>
  )
}
