import { describe, expect, test } from 'vitest'
import { designAsks } from '@/lib/domain/design/design-asks'
import { designFigures } from '@/lib/domain/design/design-figures'
import { type DesignSheet, designSheet } from '@/lib/domain/design/design-sheet'
import { refusalWords } from '@/lib/domain/design/refusal-words'
import { measured } from '@/lib/domain/reading'
import { PointRecord, type RecordOf } from '@/lib/domain/records/record'
import { assessmentFact, foldChanged, foldProperties } from './demo-design'

const mm = (text: string) => measured(text, 'mm')
const refusalOf = (sheet: DesignSheet, id: string) => sheet.equations.find((one) => one.id === id)?.refusal
const design = (change: (record: RecordOf<'design'>) => RecordOf<'design'>) =>
  designSheet(foldChanged('MD-0041', { design: change }))

describe('a missing input is named, and is no zero and no default', () => {
  test.each([
    ['hoopModulus', 'laminate', 'the modulus of the laminate round the pipe is missing'],
    ['fractureEnergy', 'hole', 'the fracture energy is missing'],
    ['shearModulus', 'hole', 'the shear modulus of the laminate is missing'],
    ['plyThickness', 'plies', 'the thickness of one ply is missing'],
    ['fewestPlies', 'plies', 'the least number of plies is missing'],
    ['overlapForm', 'overlap', 'the choice of the overlap’s form is missing'],
    ['bondFactor', 'bond', 'the factor of the bond length is missing'],
    ['taperRatio', 'length', 'the taper length for one of thickness is missing'],
    ['temperatureFactor', 'strain', 'the temperature factor is missing'],
    ['pipeCase', 'laminate', 'the choice how the pipe is counted is missing'],
  ] as const)('without %s the %s is not computed', (field, id, words) => {
    const sheet = designSheet(foldProperties('MD-0041', ({ [field]: _, ...rest }) => rest))
    expect(refusalOf(sheet, id)).toBe(words)
    expect(sheet.equations.find((one) => one.id === id)?.results).toEqual([])
  })

  test('one case that is not computed leaves open which governs', () => {
    const state = foldProperties('MD-0041', ({ fractureEnergy: _, ...rest }) => rest)
    const sheet = designSheet(state)
    expect(sheet.governing).toEqual({
      isKnown: false,
      text: 'Not computed: the fracture energy is missing. No case is taken to govern.',
    })
    expect(sheet.compared.find((one) => one.what === 'Plies')).toMatchObject({
      outcome: 'not computed',
      needed: 'not computed: the fracture energy is missing',
    })
    expect(designAsks(state, sheet)).toContain('Not computed. Laminate over the hole: the fracture energy is missing.')
    expect(sheet.sensitivity.map((one) => one.points.length)).toEqual([0, 0, 0])
  })

  test('a strain that is not stated is the computed one; with neither the laminate is not computed', () => {
    const unstated = designSheet(foldProperties('MD-0041', ({ hoopStrain: _, axialStrain: __, ...rest }) => rest))
    expect(refusalOf(unstated, 'laminate')).toBeNull()
    const neither = designSheet(
      foldProperties('MD-0041', ({ hoopStrain: _, axialStrain: __, baseStrain: ___, ...rest }) => rest),
    )
    expect(refusalOf(neither, 'laminate')).toBe('the allowed strain round the pipe is missing')
  })

  test('a design record of before, without the values, still parses and computes nothing', () => {
    const {
      properties: _,
      quantities: __,
      ...old
    } = assessmentFact('MD-0041', 'design').body.record as RecordOf<'design'>
    expect(PointRecord.safeParse(old).success).toBe(true)
    const sheet = design(() => old)
    expect(sheet.equations.every((one) => one.refusal !== null)).toBe(true)
    expect(sheet.governing.isKnown).toBe(false)
    expect(sheet.compared.find((one) => one.what === 'Total length of the recorded parts')?.outcome).toBe('not less')
  })

  test('without any design record there is nothing to compare and the engineer is asked for one', () => {
    const fact = assessmentFact('MD-0041', 'design')
    const state = foldChanged('MD-0041', {})
    const bare = {
      ...state,
      design: null,
      points: state.points.map((point) => ({
        ...point,
        attempts: point.attempts.map((one) => ({
          ...one,
          records: one.records.filter((each) => each.fact.id !== fact.id),
        })),
      })),
    }
    const sheet = designSheet(bare)
    expect(sheet.compared).toEqual([])
    expect(sheet.envelope).toEqual([])
    expect(designAsks(bare, sheet)[0]).toBe('Record the design sheet: there is none.')
  })
})

describe('outside the range of a formula', () => {
  test('a strain typed as a percentage is refused', () => {
    const sheet = designSheet(foldProperties('MD-0041', (own) => ({ ...own, hoopStrain: measured('0.18', 'mm/mm') })))
    expect(refusalOf(sheet, 'laminate')).toBe('the strain is above 0.02: enter it as a fraction')
  })

  test('a hole that no thickness holds asks for another kind of repair', () => {
    const sheet = designSheet(
      foldChanged('MD-0041', { defect: (record) => ({ ...record, holeAxial: mm('700'), holeHoop: mm('100') }) }),
    )
    expect(refusalOf(sheet, 'hole')).toMatch(/^no thickness is enough for this hole/)
    expect(sheet.findings).toContain('Hole along the pipe: as found 700 mm is outside ≤ 8 mm.')
  })

  test('a wall read only as below a limit may be less: its least is not known', () => {
    const state = foldChanged('MD-0041', {
      defect: (record) => ({
        ...record,
        wall: record.wall.map((one) =>
          one.mark === 'D-6' ? { ...one, reading: { ...mm('3'), kind: 'below', text: '< 3' } } : one,
        ),
      }),
    })
    expect(designFigures(state).wallLeft).toMatchObject({ value: null })
    expect(designFigures(state).wallLeft.note).toContain('D-6 read only as below a limit')
  })

  test('a part-wall defect has no hole to design for', () => {
    const sheet = designSheet(foldChanged('MD-0041', { defect: (record) => ({ ...record, defectKind: 'part-wall' }) }))
    expect(sheet.equations.map((one) => one.id)).not.toContain('hole')
    expect(sheet.sensitivity[2]?.note).toBe('the wall is not through')
  })

  test('values in other units are converted exactly', () => {
    const state = foldChanged('MD-0041', {
      design: (record) => ({ ...record, designPressure: measured('13.5', 'bar') }),
    })
    expect(designFigures(state).pressure).toMatchObject({ value: 1.35, shown: '13.5 bar' })
  })
})

describe('recorded below computed is a finding', () => {
  test('at the limit it stands, a hundredth below it is less, and the least is never shown smaller than it is', () => {
    const overlap = (text: string) =>
      design((record) => ({ ...record, overlapEachSide: mm(text) })).compared.find(
        (one) => one.what === 'Overlap each side',
      )
    expect(overlap('100.80')).toMatchObject({ outcome: 'not less', finding: null })
    expect(overlap('100.79')).toMatchObject({
      outcome: 'less',
      finding: 'Overlap each side: recorded 100.79 mm is less than 100.80 mm.',
    })
  })

  test('fewer plies than computed, and fewer than the recorded thickness needs', () => {
    const sheet = design((record) => ({ ...record, plies: measured('6', 'plies') }))
    expect(sheet.findings).toEqual([
      'Plies: recorded 6 plies is less than 7 plies.',
      'Plies for the thickness as recorded: recorded 6 plies is less than 11 plies.',
    ])
  })

  test('a strain above the allowed one, and a design pressure below the line’s', () => {
    const sheet = design((record) => ({
      ...record,
      designPressure: measured('1.30', 'MPa'),
      properties: { ...record.properties, axialStrain: measured('0.0019', 'mm/mm') },
    }))
    expect(sheet.findings).toEqual([
      'Strain used along the pipe: recorded 0.0019 mm/mm is more than 0.00180.',
      'Design pressure against the line’s: recorded 1.30 MPa is less than 1.35 MPa.',
    ])
  })
})

test('a refusal without words of its own is shown as its code, never as nothing', () => {
  expect(refusalWords('something_new')).toBe('something_new')
  expect(refusalWords('f_above_one')).toBe('the service factor is above one')
  expect(refusalWords('not_positive_D_mm')).toBe('the outside diameter is not above zero')
})
