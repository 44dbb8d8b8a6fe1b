import { PictureSvg } from '@/app/_ui/picture-svg'
import { stationShape } from '@/lib/capture/mark-shape'
import { marksPicture } from '@/lib/domain/pictures/marks-picture'
import type { Grid } from '@/lib/domain/records/common'

/** Where the marks lie on the unrolled pipe, each with its place in the order of taking. */
export function MarksMap({ grid, leakClock }: { grid: Grid; leakClock: string | null }) {
  return (
    <div className="tally-map">
      <PictureSvg picture={marksPicture(grid, stationShape(grid).marks.flat(), leakClock)} />
    </div>
  )
}
