import { createHash } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { vectorsTable } from '@/lib/calc/vectors-table'
import { CLIMATE_AND_SURFACE } from './worked/worked-climate-and-surface'
import { DESIGN } from './worked/worked-design'
import { HOLD_AND_DECISION } from './worked/worked-hold-and-decision'
import { LABELS_AND_DAYS } from './worked/worked-labels-and-days'
import { RECORDS } from './worked/worked-records'
import { TIME_AND_THICKNESS } from './worked/worked-time-and-thickness'
import { WRAP_AND_HARDNESS } from './worked/worked-wrap-and-hardness'

const table = vectorsTable((bytes) => new Uint8Array(createHash('sha256').update(bytes).digest()))

/** The same answer with each number within a billionth of itself, near zero within a billionth. */
function nearly(answer: unknown): unknown {
  if (typeof answer === 'number') {
    const figures = 9 - Math.ceil(Math.log10(Math.max(Math.abs(answer), 1)))
    return Number.isInteger(answer) ? expect.closeTo(answer, 8) : expect.closeTo(answer, figures)
  }
  if (Array.isArray(answer)) return answer.map(nearly)
  if (typeof answer !== 'object' || answer === null) return answer
  return Object.fromEntries(Object.entries(answer).map(([key, value]) => [key, nearly(value)]))
}

describe.each([
  ['climate and surface', CLIMATE_AND_SURFACE],
  ['time and thickness', TIME_AND_THICKNESS],
  ['wrap and hardness', WRAP_AND_HARDNESS],
  ['laminate design and bands', DESIGN],
  ['pressure hold and decision', HOLD_AND_DECISION],
  ['labels and days', LABELS_AND_DAYS],
  ['records', RECORDS],
])('worked cases of %s', (_title, cases) => {
  test.each(cases)('%s %j', (fn, inputs, answer) => {
    expect(table[fn]?.(inputs)).toEqual(nearly(answer))
  })
})

test('every function of the reference has a worked case', () => {
  const worked = new Set(
    [
      CLIMATE_AND_SURFACE,
      TIME_AND_THICKNESS,
      WRAP_AND_HARDNESS,
      DESIGN,
      HOLD_AND_DECISION,
      LABELS_AND_DAYS,
      RECORDS,
    ].flatMap((cases) => cases.map(([fn]) => fn)),
  )
  expect(Object.keys(table).filter((fn) => !worked.has(fn))).toEqual([])
})
