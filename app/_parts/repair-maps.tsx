import type { RepairState } from '@/lib/domain/fold/repair-state'
import { type SurfaceMapOf, surfaceMapsOf } from '@/lib/domain/pictures/surface-map-of'
import { surfaceMapPicture } from '@/lib/domain/pictures/surface-map-picture'
import { GridTable } from './grid-table'
import { TableFold } from './table-fold'
import { TwoFormats } from './two-formats'

/** One grid drawn on the unrolled pipe, with the table beside it for who cannot see it. */
export function SurfaceMap({ map, href }: { map: SurfaceMapOf; href: string }) {
  return (
    <>
      <TwoFormats draw={(format) => surfaceMapPicture(map, format)} markHref={() => href} />
      <TableFold>
        <GridTable grid={map.grid} readings={map.readings} isLow={(mark) => map.verdictAt(mark) === 'fail'} />
      </TableFold>
    </>
  )
}

/** The latest map of each kind of a repair. A mark leads to its record, or where `hrefOf` says. */
export function RepairMaps({
  state,
  hrefOf = (point, attempt, fact) =>
    `/repairs/${encodeURIComponent(state.number)}/points/${point}?attempt=${attempt}#${fact}`,
}: {
  state: RepairState
  hrefOf?: (point: string, attempt: number, fact: string) => string
}) {
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
          <SurfaceMap map={map} href={hrefOf(point.no, map.attempt, map.fact)} />
        </section>
      ))}
    </>
  )
}
