import { stationShape } from '@/lib/capture/mark-shape'
import { toNumber } from '@/lib/domain/decimal'
import { clockDegrees } from '@/lib/domain/pictures/surface-map-picture'
import type { Grid } from '@/lib/domain/records/common'

const WIDTH = 188
const HEIGHT = 62
const EDGE = 12

/** Where the marks lie on the unrolled pipe, each with its place in the order of taking. Black on white, to scale along the pipe. */
export function MarksMap({ grid, leakClock }: { grid: Grid; leakClock: string | null }) {
  const along = grid.stations.map((one) => toNumber(one.fromLeak))
  const [from, to] = [Math.min(...along, 0), Math.max(...along, 0)]
  const x = (mm: number) => EDGE + ((mm - from) / Math.max(1, to - from)) * (WIDTH - 2 * EDGE)
  const y = (clock: string) => 8 + ((clockDegrees(clock) % 360) / 360) * (HEIGHT - 16)
  const order = new Map(
    stationShape(grid)
      .marks.flat()
      .map((mark, at) => [mark, at + 1]),
  )
  return (
    <svg
      className="tally-map"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label="Map of the marks on the unrolled pipe, stations across and clock positions down"
    >
      <rect x={0.3} y={0.3} width={WIDTH - 0.6} height={HEIGHT - 0.6} fill="none" stroke="#000" strokeWidth={0.3} />
      {grid.clocks.map((clock) => (
        <g key={clock}>
          <line
            x1={EDGE - 4}
            x2={WIDTH - 3}
            y1={y(clock)}
            y2={y(clock)}
            stroke="#000"
            strokeWidth={0.15}
            strokeDasharray="1 1"
          />
          <text x={1.5} y={y(clock) + 1.2} fontSize={3.4}>
            {clock}
          </text>
        </g>
      ))}
      {leakClock ? (
        <path
          d={`M${x(0) - 3.4} ${y(leakClock) - 3.4}l6.8 6.8m0 -6.8l-6.8 6.8`}
          stroke="#000"
          strokeWidth={0.5}
          fill="none"
        />
      ) : null}
      {grid.stations.map(({ name }, at) => (
        <g key={name}>
          {grid.clocks.map((clock) => (
            <g key={clock}>
              <circle cx={x(along[at] ?? 0)} cy={y(clock)} r={2.6} fill="#fff" stroke="#000" strokeWidth={0.35} />
              <text x={x(along[at] ?? 0)} y={y(clock) + 1.1} fontSize={3} textAnchor="middle">
                {order.get(`${name}-${clock}`)}
              </text>
            </g>
          ))}
          <text x={x(along[at] ?? 0)} y={HEIGHT - 1.4} fontSize={3.4} textAnchor="middle" fontWeight={700}>
            {name}
          </text>
        </g>
      ))}
    </svg>
  )
}
