import { describe, expect, test } from 'vitest'
import { FORMS } from '@/lib/capture/forms/form-table'
import { settledPart } from '@/lib/capture/settled-part'
import { streamOf } from '@/lib/domain/facts/fact'
import { attemptSlots } from '@/lib/domain/fold/attempt-slots'
import { judgeContextOf } from '@/lib/domain/fold/judge-attempts'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { repairGround } from '@/lib/domain/fold/repair-ground'
import type { JudgeContext } from '@/lib/domain/judge/judge-context'
import { judgePoint } from '@/lib/domain/judge/judge-criterion'
import { showFinding } from '@/lib/domain/judge/show-finding'
import { type PointRecord, RECORD_TYPES } from '@/lib/domain/records/record'
import { demoFacts } from '@/lib/server/demo/demo-facts'

const facts = demoFacts().facts.map((one) => one.fact)
const ASOF = '2026-05-29T08:00:00+01:00'

function contextsOf(number: string): { record: PointRecord; context: JudgeContext }[] {
  const stream = streamOf('repair', number)
  const ground = repairGround(facts, stream, ASOF, {})
  const points = attemptSlots(ground)
  return ofKind(ground.own, 'recorded').flatMap((fact) => {
    const slot = points
      .find((one) => one.no === fact.body.point)
      ?.attempts.find((one) => one.attempt === fact.body.attempt)
    const context = slot ? judgeContextOf(ground, points, slot) : null
    return context
      ? [
          {
            record: fact.body.record,
            context: { ...context, records: context.records.filter((one) => one.fact !== fact.id) },
          },
        ]
      : []
  })
}

/** Every way of cutting a record short: each place taken away, emptied, or left as text that is no number yet. */
function halvesOf(record: unknown): unknown[] {
  if (record === null || typeof record !== 'object') return [undefined]
  if (Array.isArray(record))
    return [
      undefined,
      [],
      [undefined],
      [{}],
      ...record.slice(0, 1).flatMap((one) => halvesOf(one).map((half) => [half, ...record.slice(1)])),
    ]
  const fields = record as Record<string, unknown>
  const isReading = typeof fields.kind === 'string' && 'unit' in fields
  return [
    undefined,
    {},
    ...(isReading
      ? [
          { text: '1,2', unit: fields.unit },
          { text: '', unit: fields.unit },
        ]
      : Object.keys(fields).flatMap((name) => halvesOf(fields[name]).map((half) => ({ ...fields, [name]: half })))),
  ]
}

describe('a half-filled form', () => {
  const all = ['MD-0041', 'MD-0044'].flatMap(contextsOf)
  const seen = new Map(all.map((one) => [one.record.type, one]))

  test.each([...seen])('%s is judged at every stage of keying without breaking', (type, { record, context }) => {
    const halves = [
      { type },
      ...halvesOf(record)
        .filter((half) => half !== null && typeof half === 'object')
        .map((half) => ({ ...(half as object), type })),
    ]
    for (const half of halves) {
      const results = judgePoint({
        ...context,
        records: [
          ...context.records,
          {
            fact: null,
            record: settledPart(type, half as Record<string, unknown>),
            point: context.point.no,
            attempt: context.attempt,
            observedAt: ASOF,
            observedBy: 'tobias-wrenfield' as never,
          },
        ],
      })
      for (const result of results) expect(result.findings.map(showFinding).every((text) => text.length > 0)).toBe(true)
    }
  })

  test.each([...seen])('a whole %s loses nothing when what is unsettled is left out', (type, { record }) => {
    expect(settledPart(type, record as unknown as Record<string, unknown>)).toEqual(record)
  })

  test('every record type has a form whose fields carry a name and a label', () => {
    for (const type of RECORD_TYPES) expect(FORMS[type].fields.every((field) => field.label.length > 1)).toBe(true)
  })
})
