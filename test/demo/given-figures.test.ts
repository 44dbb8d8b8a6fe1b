import { describe, expect, test } from 'vitest'
import { showDecimal } from '@/lib/domain/decimal'
import { FACTS } from './folded-demo'
import { GIVEN_ROWS, GIVEN_TIMES } from './given-figures'

const records = FACTS.flatMap((fact) => (fact.kind === 'recorded' ? [fact] : []))

function recordsOf(repair: string, type: string) {
  return records.filter((fact) => fact.stream === `repair:${repair}` && fact.body.record.type === type)
}

/** Numbers of a record as read, with their digits. */
function numbersIn(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(numbersIn)
  if (value === null || typeof value !== 'object') return []
  if ('kind' in value && value.kind === 'number' && 'digits' in value && 'scale' in value)
    return [showDecimal({ digits: Number(value.digits), scale: Number(value.scale) })]
  return Object.values(value).flatMap(numbersIn)
}

describe('every given figure stands in a record of its repair, digits as given, as often as given', () => {
  test.each(GIVEN_ROWS)('$of $type', ({ of, type, figures }) => {
    const found = recordsOf(of, type).flatMap((fact) => numbersIn(fact.body.record))
    const wanted = figures.split(' ')
    for (const figure of new Set(wanted))
      expect({
        figure,
        times: Math.min(found.filter((one) => one === figure).length, wanted.filter((one) => one === figure).length),
      }).toEqual({ figure, times: wanted.filter((one) => one === figure).length })
  })
})

describe('every given time stands as given', () => {
  test.each(GIVEN_TIMES)('%s %s %s %s', (repair, type, day, clocks) => {
    const text = JSON.stringify(recordsOf(repair, type).map((fact) => [fact.observedAt, fact.body.record]))
    for (const clock of clocks.split(' '))
      expect(text).toContain(`2026-${day}T${clock.length === 5 ? `${clock}:00` : clock}+01:00`)
  })
})

test('marks that were no number stay so', () => {
  const kinds = (repair: string, type: string) =>
    JSON.stringify(recordsOf(repair, type).map((fact) => fact.body.record))
  for (const repair of ['MD-0041', 'MD-0042', 'MD-0043', 'MD-0044'])
    expect(kinds(repair, 'defect')).toContain('"through-wall"')
  expect(kinds('MD-0043', 'defect')).toContain('"no-access"')
  expect(kinds('MD-0043', 'filler-thickness').split('"not-inspected"').length - 1).toBe(3)
})
