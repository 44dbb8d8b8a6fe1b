import { isRefused } from '@/lib/calc/refusal'
import type { DesignChoices, DesignFigures } from './design-figures'
import { numberText } from './equation'
import { refusalWords } from './refusal-words'
import { type DesignValues, requiredLaminate, valuesOf } from './required-laminate'

/** Computed plies over a run of one figure, all others as they are. A place without an answer is null and is drawn as a gap. */
export type SensitivitySeries = {
  what: string
  unit: string
  atValue: number | null
  atPlies: number | null
  points: readonly { value: number; plies: number | null }[]
  /** Why there is no series, or what the reader must know of it. */
  note: string | null
}

const STEPS = 48
/** How far each figure is run, as shares of its own value: extents of a drawing, no limits. */
const RUNS = { pressure: [0.5, 3], hole: [1, 12], wallLeft: [0.2, 1] } as const

/** How the computed plies move with the wall left, the pressure and the size of the hole. */
export function sensitivityOf(figures: DesignFigures, choices: DesignChoices): SensitivitySeries[] {
  const values = valuesOf(figures)
  const wallEnd = values.wall
  return [
    series('wallLeft', 'wall left', 'mm', values.wallLeft, runOf(wallEnd, RUNS.wallLeft), values, choices, {
      still:
        choices.pipeCase === 'pipe may yield'
          ? null
          : choices.pipeCase === 'pipe stays elastic'
            ? 'the wall enters by Ps, as stated'
            : choices.pipeCase === 'no help from the pipe'
              ? 'the pipe is not counted'
              : null,
    }),
    series(
      'pressure',
      'design pressure',
      'MPa',
      values.pressure,
      runOf(values.pressure, RUNS.pressure),
      values,
      choices,
    ),
    series('hole', 'size of the hole', 'mm', values.hole, runOf(values.hole, RUNS.hole), values, choices, {
      still: choices.isThroughWall === false ? 'the wall is not through' : null,
    }),
  ]
}

function runOf(value: number | null, [from, to]: readonly [number, number]): [number, number] | null {
  return value === null ? null : [from * value, to * value]
}

function series(
  key: 'wallLeft' | 'pressure' | 'hole',
  what: string,
  unit: string,
  atValue: number | null,
  run: [number, number] | null,
  values: DesignValues,
  choices: DesignChoices,
  { still = null }: { still?: string | null } = {},
): SensitivitySeries {
  const pliesAt = (value: number | null): number | null => {
    const answer = requiredLaminate({ ...values, [key]: value }, choices)
    return isRefused(answer) ? null : answer.plies
  }
  const own = requiredLaminate(values, choices)
  const points = run
    ? Array.from({ length: STEPS + 1 }, (_, step) => {
        const value = run[0] + ((run[1] - run[0]) * step) / STEPS
        return { value, plies: pliesAt(value) }
      })
    : []
  const isGone = points.every((one) => one.plies === null)
  return {
    what,
    unit,
    atValue,
    atPlies: isRefused(own) ? null : own.plies,
    points: isGone ? [] : points,
    note: isGone
      ? isRefused(own)
        ? `not computed: ${refusalWords(own.refused)}`
        : `not computed: ${what} is missing`
      : (still ?? gapNote(points)),
  }
}

function gapNote(points: SensitivitySeries['points']): string | null {
  const gap = points.find((one) => one.plies === null)
  return gap ? `no answer from ${numberText(Math.round(gap.value * 100) / 100)} on` : null
}
