import { describe, expect, test } from 'vitest'
import { DESIGN_PROPERTIES_FIELDS, DESIGN_QUANTITIES_FIELDS } from '@/lib/capture/forms/design-fields'
import { decimal } from '@/lib/domain/decimal'
import { designRevisions, isApproved } from '@/lib/domain/design/design-approval'
import { designAsks } from '@/lib/domain/design/design-asks'
import { designSheet } from '@/lib/domain/design/design-sheet'
import { sameStretch } from '@/lib/domain/design/same-stretch'
import { sensitivityPanel, sensitivityPicture } from '@/lib/domain/design/sensitivity-picture'
import { FactId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { measured } from '@/lib/domain/reading'
import { DesignProperties, DesignQuantities } from '@/lib/domain/records/defect'
import { foldDemo } from '@/test/demo/folded-demo'
import { assessmentFact, foldChanged, foldProperties } from './demo-design'

describe('the run of plies', () => {
  const [wall, pressure, hole] = designSheet(foldDemo('MD-0041')).sensitivity
  const pliesOf = (one: typeof wall) => one?.points.map((point) => point.plies ?? Number.NaN) ?? []

  test('more pressure and a greater hole never ask for fewer plies; the pipe that is not counted changes nothing', () => {
    for (const run of [pliesOf(pressure), pliesOf(hole)]) {
      expect(run.length).toBeGreaterThan(10)
      expect(run).toEqual([...run].sort((a, b) => a - b))
      expect(run.at(-1)).toBeGreaterThan(run[0] ?? 0)
    }
    expect(new Set(pliesOf(wall))).toEqual(new Set([7]))
    expect(wall?.note).toBe('the pipe is not counted')
  })

  test('where the pipe carries, less wall never asks for fewer plies', () => {
    const state = foldProperties('MD-0041', (own) => ({
      ...own,
      pipeCase: 'pipe may yield',
      pipeModulus: measured('207000', 'MPa'),
      pipeStress: measured('15', 'MPa'),
      livePressure: measured('0', 'MPa'),
    }))
    const run = pliesOf(designSheet(state).sensitivity[0])
    expect(run).toEqual([...run].sort((a, b) => b - a))
    expect(run[0]).toBeGreaterThan(run.at(-1) ?? 0)
  })

  test('is drawn with its place, the chosen plies and words for who cannot see it; no answer leaves a gap', () => {
    const { sensitivity, chosenPlies } = designSheet(foldDemo('MD-0041'))
    const picture = sensitivityPicture(sensitivity, chosenPlies)
    const texts = picture.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []))
    expect(texts).toEqual(expect.arrayContaining(['7 at 1.35', '7 at 4', '11 chosen']))
    expect(picture.description).toContain('Computed plies run from 4 at 0.675 MPa to 19 at 4.05 MPa')
    const broken = designSheet(
      foldChanged('MD-0041', { defect: (record) => ({ ...record, holeAxial: measured('120', 'mm') }) }),
    ).sensitivity
    const third = broken[2]
    if (!third) throw new Error('no run of the hole')
    expect(third.points.some((one) => one.plies === null)).toBe(true)
    expect(third.note).toMatch(/^no answer from \d+/)
    const lines = sensitivityPanel(third, broken, null).shapes.flatMap((shape) =>
      shape.kind === 'polyline' ? shape.points.flat() : [],
    )
    expect(lines.length).toBeGreaterThan(0)
    expect(lines.every(Number.isFinite)).toBe(true)
  })
})

describe('another repair on the same line', () => {
  const own = foldDemo('MD-0041')
  const other = (station: string, changed: Partial<RepairState['opened']['body']> = {}): RepairState => ({
    ...own,
    stream: 'repair:MD-0099' as RepairState['stream'],
    number: 'MD-0099',
    opened: { ...own.opened, body: { ...own.opened.body, stationFromDatum: decimal(station), ...changed } },
  })

  test('1240 ± 177 and 1500 ± 177 overlap by 94.0 mm', () => {
    expect(1240 + 177 - (1500 - 177)).toBe(94)
    expect(sameStretch(own, [own, other('1500')])).toMatchObject([
      { number: 'MD-0099', kind: 'overlaps', text: expect.stringContaining('overlaps by 94.0 mm') },
    ])
  })

  test('ends that touch do not overlap; a hair nearer they do', () => {
    expect(sameStretch(own, [other('1594')])[0]).toMatchObject({ kind: 'beside' })
    expect(sameStretch(own, [other('1593.9')])[0]).toMatchObject({ kind: 'overlaps' })
  })

  test('stations from another datum, or without a length, are not taken for clear', () => {
    expect(sameStretch(own, [other('9000', { datum: 'weld W-18' })])[0]).toMatchObject({
      kind: 'not comparable',
      text: expect.stringContaining('measure the distance'),
    })
    expect(sameStretch(own, [{ ...other('9000'), design: null, defect: null }])[0]?.kind).toBe('not comparable')
  })

  test('a removed repair and another line are left out', () => {
    expect(sameStretch(own, [{ ...other('1500'), status: 'removed' }])).toEqual([])
    expect(sameStretch(own, [other('1500', { line: 'another line' }), foldDemo('MD-0042')])).toEqual([])
  })
})

describe('approval', () => {
  const design = assessmentFact('MD-0041', 'design')
  const later = (id: string, minute: string) => ({
    ...design,
    id: FactId.parse(id),
    observedAt: `2026-05-11T09:${minute}:00+01:00`,
    enteredAt: `2026-05-11T09:${minute}:00+01:00`,
  })

  test('revision 0 stands approved by its engineer, who also released the hold', () => {
    const [only] = designRevisions(foldDemo('MD-0041'))
    expect(only).toMatchObject({
      revision: 0,
      isInForce: true,
      approvals: [{ name: 'Ravi Castellane', state: 'stands' }],
    })
    expect(only?.released.length).toBe(1)
    expect(only && isApproved(only)).toBe(true)
  })

  test('a later revision is in force, is not approved by the signature on the earlier one, and is asked for', () => {
    const record = { ...design.body.record, revision: 1 }
    const next = { ...later('019e1500-0000-7000-8000-000000000001', '00'), body: { ...design.body, record } } as Fact
    const state = foldChanged('MD-0041', {}, [next])
    const [newest, first] = designRevisions(state)
    expect(newest).toMatchObject({ revision: 1, isInForce: true, approvals: [] })
    expect(first).toMatchObject({ revision: 0, isInForce: false })
    expect(designAsks(state, designSheet(state))).toContain('Approve design sheet DS-0041 revision 1, or revise it.')
  })

  test('a correction of the record breaks the approval', () => {
    const fix: Fact = {
      ...later('019e1500-0000-7000-8000-000000000002', '10'),
      kind: 'corrected',
      body: {
        target: design.id,
        changes: [{ path: ['sheetNo'], from: 'DS-0041', to: 'DS-0041a' }],
        reason: 'Number of the sheet mistyped.',
      },
    }
    const state = foldChanged('MD-0041', {}, [fix])
    const [only] = designRevisions(state)
    expect(only).toMatchObject({ isCorrected: true, approvals: [{ state: 'broken' }] })
    expect(only?.covers).toContain(fix.id)
    expect(designAsks(state, designSheet(state))[0]).toContain('it was corrected after it was approved')
  })
})

test.each([
  [DESIGN_PROPERTIES_FIELDS, DesignProperties],
  [DESIGN_QUANTITIES_FIELDS, DesignQuantities],
] as const)('the form asks for every value of the record, and for no other', (field, schema) => {
  const names = field.kind === 'group' ? field.of.map((one) => one.name) : []
  expect(names).toEqual(Object.keys(schema.unwrap().shape))
  expect(schema.safeParse({}).success).toBe(true)
})
