import type { Picture, Place, Shape } from '../pictures/picture'
import type { SensitivitySeries } from './sensitivity'

const PANEL_WIDTH_PX = 240
const PANEL_HEIGHT_PX = 214
const [LEFT_PX, RIGHT_PX, TOP_PX, BOTTOM_PX] = [36, 14, 30, 52]

/** Computed plies against the wall left, the pressure and the hole, side by side for a sheet of paper. @param chosen plies as recorded, drawn as a level line */
export function sensitivityPicture(all: readonly SensitivitySeries[], chosen: number | null): Picture {
  const top = levelOf(all, chosen)
  return {
    widthPx: PANEL_WIDTH_PX * all.length,
    heightPx: PANEL_HEIGHT_PX,
    title: 'Plies against wall, pressure and hole',
    description: all.map((one) => described(one, chosen)).join(' '),
    shapes: all.flatMap((one, at) => panelShapes(one, chosen, top, at * PANEL_WIDTH_PX)),
  }
}

/** One of the panels alone, for a screen that stacks them. @param all every series, so that the panels keep one scale of plies */
export function sensitivityPanel(
  one: SensitivitySeries,
  all: readonly SensitivitySeries[],
  chosen: number | null,
): Picture {
  return {
    widthPx: PANEL_WIDTH_PX,
    heightPx: PANEL_HEIGHT_PX,
    title: `Plies against ${one.what}`,
    description: described(one, chosen),
    shapes: panelShapes(one, chosen, levelOf(all, chosen), 0),
  }
}

/** Top of the scale of plies: a whole even number above everything drawn. */
function levelOf(all: readonly SensitivitySeries[], chosen: number | null): number {
  const most = Math.max(2, chosen ?? 0, ...all.flatMap((one) => one.points.map((point) => point.plies ?? 0)))
  return 2 * Math.ceil((most + 1) / 2)
}

function described(one: SensitivitySeries, chosen: number | null): string {
  const known = one.points.filter((point) => point.plies !== null)
  const [first, last] = [known[0], known.at(-1)]
  const run =
    first && last
      ? `Computed plies run from ${first.plies} at ${text(first.value)} ${one.unit} to ${last.plies} at ${text(last.value)} ${one.unit} of ${one.what}.`
      : `No computed plies against ${one.what}.`
  return `${run}${chosen === null ? '' : ` Chosen: ${chosen}.`}${one.note ? ` ${one.note.charAt(0).toUpperCase()}${one.note.slice(1)}.` : ''}`
}

/** A value on an axis, to three significant figures. */
function text(value: number): string {
  return String(Number(value.toPrecision(3)))
}

function panelShapes(one: SensitivitySeries, chosen: number | null, top: number, offsetPx: number): Shape[] {
  const [left, right] = [offsetPx + LEFT_PX, offsetPx + PANEL_WIDTH_PX - RIGHT_PX]
  const bottom = PANEL_HEIGHT_PX - BOTTOM_PX
  const [from, to] = [one.points[0]?.value ?? 0, one.points.at(-1)?.value ?? 1]
  const x = (value: number): number => left + ((value - from) / (to - from || 1)) * (right - left)
  const y = (plies: number): number => bottom - (plies / top) * (bottom - TOP_PX)
  const levelStep = top <= 12 ? 2 : top <= 24 ? 4 : Math.ceil(top / 12) * 2
  const levels = Array.from({ length: Math.floor(top / levelStep) + 1 }, (_, at) => at * levelStep)
  const words = (
    at: Place,
    said: string,
    style: 'note' | 'figure' | 'callout',
    anchor: 'start' | 'middle' | 'end' = 'start',
  ) => ({ kind: 'text', x: at[0], y: at[1], text: said, style, anchor }) as const
  return [
    {
      kind: 'polygon',
      style: 'ground',
      points: [
        [left, TOP_PX],
        [right, TOP_PX],
        [right, bottom],
        [left, bottom],
      ],
    },
    {
      kind: 'segments',
      style: 'axis',
      segments: levels.map((level) => [
        [left, y(level)],
        [right, y(level)],
      ]),
    },
    ...levels.map((level) => words([left - 6, y(level) + 4], String(level), 'figure', 'end')),
    words([left, 18], 'plies', 'note'),
    ...(one.points.length > 0
      ? [
          ...[0, 0.5, 1].map((share) => {
            const value = from + (to - from) * share
            return words(
              [x(value), bottom + 16],
              text(value),
              'figure',
              share === 0 ? 'start' : share === 1 ? 'end' : 'middle',
            )
          }),
          ...stepsOf(one, x, y),
          ...(chosen === null
            ? []
            : [
                {
                  kind: 'segments',
                  style: 'dimension',
                  segments: [
                    [
                      [left, y(chosen)],
                      [right, y(chosen)],
                    ],
                  ],
                } as const,
                words([left + 4, y(chosen) - 5], `${chosen} chosen`, 'note'),
              ]),
          ...(one.atValue !== null && one.atPlies !== null && one.atValue >= from && one.atValue <= to
            ? [
                { kind: 'circle', x: x(one.atValue), y: y(one.atPlies), radiusPx: 4.5, style: 'dot' } as const,
                words(
                  [Math.min(x(one.atValue) + 8, right - 60), y(one.atPlies) + 17],
                  `${one.atPlies} at ${text(one.atValue)}`,
                  'note',
                ),
              ]
            : []),
        ]
      : []),
    words([left, bottom + 32], `${one.what}, ${one.unit}`, 'note'),
    ...(one.note ? [words([left, bottom + 46], one.note, 'note')] : []),
  ]
}

/** The series as stairs, broken where there is no answer. */
function stepsOf(one: SensitivitySeries, x: (value: number) => number, y: (plies: number) => number): Shape[] {
  const runs: Place[][] = []
  let current: Place[] = []
  let before: number | null = null
  for (const { value, plies } of one.points) {
    if (plies === null) {
      if (current.length > 1) runs.push(current)
      current = []
    } else {
      if (before !== null && current.length > 0 && before !== plies) current.push([x(value), y(before)])
      current.push([x(value), y(plies)])
    }
    before = plies
  }
  if (current.length > 1) runs.push(current)
  return runs.map((points) => ({ kind: 'polyline', points, style: 'surface' }))
}
