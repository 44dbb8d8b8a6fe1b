import { describe, expect, test } from 'vitest'
import type { AttemptState } from '@/lib/domain/fold/repair-state'
import { hatchOf } from '@/lib/domain/pictures/hatch'
import type { Picture, Shape } from '@/lib/domain/pictures/picture'
import { svgElementsOf } from '@/lib/domain/pictures/picture-svg'
import { sectionPicture } from '@/lib/domain/pictures/section-picture'
import { surfaceMapPicture } from '@/lib/domain/pictures/surface-map-picture'
import { verdictsByMark } from '@/lib/domain/pictures/verdicts-by-mark'
import { defect } from '@/test/dossier/design-by-hand'
import { repairByHand } from '@/test/dossier/state-by-hand'

const texts = (picture: Picture): string[] =>
  picture.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []))
const polygons = (picture: Picture, style: string) =>
  picture.shapes.filter(
    (shape): shape is Extract<Shape, { kind: 'polygon' }> => shape.kind === 'polygon' && shape.style === style,
  )
const failedHardness = (): AttemptState =>
  repairByHand()
    .points.flatMap((point) => point.attempts)
    .find((one) => one.point === '16' && one.attempt === 1) as AttemptState
const hardnessMap = (attempt: AttemptState): Picture => {
  const record = attempt.records[0]?.record
  if (record?.type !== 'hardness') throw new RangeError('no hardness')
  return surfaceMapPicture({
    title: 'Hardness',
    grid: record.grid,
    readings: record.readings,
    verdictAt: verdictsByMark(attempt, 'hardness', () => true),
    unit: 'ShoreD',
    limit: 'each ≥ 74',
  })
}

describe('section through the leak', () => {
  test('shows the wall readings of the leak’s clock row, the filler at the hole and the number of plies', () => {
    const words = texts(sectionPicture(repairByHand()))
    for (const word of [
      '6.3',
      '5.4',
      'TW',
      '5.2',
      '6.1',
      'Filler 7.3 mm over the hole',
      'Wrap, 9 plies',
      'Arrest: tapered plug',
    ])
      expect(words).toContain(word)
  })
  test('draws the wrap broken when its point is in question and solid once all its points are released', () => {
    const state = repairByHand()
    expect(polygons(sectionPicture(state), 'wrap').map((one) => one.state)).toEqual(['broken'])
    const mended = {
      ...state,
      points: state.points.map((point) =>
        point.no === '14' ? { ...point, current: { ...point.current, state: 'released' as const } } : point,
      ),
    }
    expect(polygons(sectionPicture(mended), 'wrap').map((one) => one.state)).toEqual(['released'])
  })
  test('draws one line for every ply', () => {
    const lines = sectionPicture(repairByHand()).shapes.filter(
      (shape) => shape.kind === 'polyline' && (shape.style === 'ply' || shape.style === 'ply-outer'),
    )
    expect(lines).toHaveLength(9)
  })
  test('a design alone is drawn hatched and says so; an empty record invents no number', () => {
    const state = repairByHand()
    const designed = sectionPicture({ ...state, points: [], defect: null })
    expect(polygons(designed, 'wrap').map((one) => one.state)).toEqual(['open'])
    expect(texts(designed)).toContain('Wrap, 9 plies by design')
    const empty = texts(sectionPicture({ ...state, points: [], defect: null, design: null }))
    expect(empty).toContain('Steel, not yet measured')
    expect(empty.filter((one) => /\d/.test(one))).toEqual([])
  })
  test('every place lies inside the picture', () => {
    const state = repairByHand()
    for (const picture of [
      sectionPicture(state),
      sectionPicture({ ...state, points: [] }),
      hardnessMap(failedHardness()),
    ])
      for (const shape of picture.shapes)
        if (shape.kind === 'polygon' || shape.kind === 'polyline')
          for (const [x, y] of shape.points) {
            expect(x).toBeGreaterThanOrEqual(0)
            expect(x).toBeLessThanOrEqual(picture.widthPx)
            expect(y).toBeGreaterThanOrEqual(-1)
            expect(y).toBeLessThanOrEqual(picture.heightPx)
          }
  })
})

describe('surface map', () => {
  test('a mark that fails is a diamond, one that passes a ring, and 12 o’clock stands at both edges', () => {
    const picture = hardnessMap(failedHardness())
    expect(polygons(picture, 'mark-fail').map((one) => one.mark)).toEqual(['A-6', 'B-6', 'C-6', 'D-6', 'E-6'])
    expect(picture.shapes.filter((shape) => shape.kind === 'circle')).toHaveLength(20)
    expect(texts(picture).filter((one) => one === '12')).toHaveLength(2)
  })
  test('through-wall, no access and not inspected stand in squares and shade nothing', () => {
    const picture = surfaceMapPicture({
      title: 'Wall',
      grid: defect.grid,
      readings: defect.wall,
      verdictAt: () => null,
      unit: 'mm',
      limit: null,
    })
    expect(polygons(picture, 'mark-plain').map((one) => one.mark)).toEqual(['B-9', 'C-6', 'E-9'])
    const cells = picture.shapes.find((shape) => shape.kind === 'cells')
    expect(cells?.kind === 'cells' && cells.shares.includes(null)).toBe(true)
  })
  test('marks without a criterion are not judged', () => {
    expect(verdictsByMark(failedHardness(), 'profile', () => true)('A-6')).toBeNull()
  })
})

test('hatching stays inside its polygon', () => {
  const segments = hatchOf(
    [
      [0, 0],
      [40, 0],
      [40, 30],
      [0, 30],
    ],
    9,
  )
  expect(segments.length).toBeGreaterThan(5)
  for (const [x, y] of segments.flat()) expect(x >= -0.1 && x <= 40.1 && y >= -0.1 && y <= 30.1).toBe(true)
})

test('a picture becomes SVG elements with text and marks', () => {
  const elements = svgElementsOf(hardnessMap(failedHardness()))
  expect(
    elements.filter((one) => one.tag === 'polygon' && one.className === 'pic-mark-fail').map((one) => one.mark),
  ).toEqual(['A-6', 'B-6', 'C-6', 'D-6', 'E-6'])
  expect(elements.some((one) => one.tag === 'text' && one.text === '69')).toBe(true)
})
