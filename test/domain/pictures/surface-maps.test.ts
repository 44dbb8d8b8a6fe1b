import { describe, expect, test } from 'vitest'
import { surfaceMapsOf } from '@/lib/domain/pictures/surface-map-of'
import { surfaceMapPicture } from '@/lib/domain/pictures/surface-map-picture'
import { shadeSteps, stepOf } from '@/lib/domain/pictures/surface-shading'
import { weakestZone, type ZoneGrid } from '@/lib/domain/pictures/weakest-zone'
import { measured, type Reading } from '@/lib/domain/reading'
import { attemptOf, foldDemo } from '@/test/demo/folded-demo'

const STATIONS = [
  { name: 'A', mm: -60 },
  { name: 'B', mm: 0 },
  { name: 'C', mm: 60 },
]
const RING = [
  { clock: '12', deg: 0 },
  { clock: '3', deg: 90 },
  { clock: '6', deg: 180 },
  { clock: '9', deg: 270 },
]
function grid(rows: string, change: Partial<ZoneGrid> = {}): ZoneGrid {
  const byMark = new Map<string, Reading>()
  rows.split('|').forEach((row, at) => {
    row.split(' ').forEach((text, column) => {
      const mark = `${STATIONS[column]?.name}-${RING[at]?.clock}`
      byMark.set(mark, text === 'TW' ? { kind: 'through-wall' } : measured(text, 'mm'))
    })
  })
  return { stations: STATIONS, ring: RING, byMark, unit: 'mm', verdictAt: () => null, lowestStepTop: 6, ...change }
}

describe('weakest zone', () => {
  test('grows from the lowest mark to its neighbours in the lowest step, over 12 o’clock too', () => {
    const zone = weakestZone(grid('8.0 5.0 8.0|8.0 7.0 8.0|8.0 7.0 5.5|8.0 5.9 8.0'))
    expect(zone?.marks).toEqual(['B-12', 'B-9'])
    expect(zone?.text).toBe('weakest zone B-12, B-9; lowest 5.0 at B-12')
    expect(zone?.fields.filter((one) => one.mark === 'B-12')).toEqual([
      { mark: 'B-12', fromMm: -30, toMm: 30, fromDeg: 0, toDeg: 45 },
      { mark: 'B-12', fromMm: -30, toMm: 30, fromDeg: 315, toDeg: 360 },
    ])
  })
  test('a value at the top of the lowest step is not in it', () => {
    expect(weakestZone(grid('8 8 8|8 5.8 6.0|8 8 8|8 8 8'))?.marks).toEqual(['B-3'])
  })
  test('through-wall is the weakest, and the lowest number is told beside it', () => {
    expect(weakestZone(grid('8.0 8.0 8.0|8.0 8.0 8.0|5.5 TW 5.2|8.0 8.0 8.0'))?.text).toBe(
      'weakest zone A-6, B-6, C-6; through-wall at B-6; lowest 5.2 at C-6',
    )
  })
  test('where marks fail, the zone is the failing marks beside the lowest', () => {
    const failing = new Set(['A-6', 'B-6', 'C-12'])
    const zone = weakestZone(
      grid('8 8 7.4|8 8 8|7.2 7.0 7.9|8 8 8', { verdictAt: (mark) => (failing.has(mark) ? 'fail' : 'pass') }),
    )
    expect(zone?.marks).toEqual(['A-6', 'B-6'])
  })
  test('equal lowest marks are all named; marks that all read the same have no weakest zone', () => {
    expect(weakestZone(grid('8 8 8|5.0 8 8|8 8 8|8 8 5.0'))?.text).toBe('weakest zone A-3, C-9; lowest 5.0 at A-3, C-9')
    expect(weakestZone(grid('8 8 8|8 8 8|8 8 8|8 8 8'))).toBeNull()
  })
})

describe('shading', () => {
  test('round steps: 63 to 76 falls into 60–65, 65–70, 70–75, 75–80', () => {
    const steps = shadeSteps([[63, 76, null]])
    expect(steps).toMatchObject({ from: 60, step: 5, count: 4, places: 0 })
    expect(steps && [63, 65, 74.9, 76].map((value) => stepOf(value, steps))).toEqual([0, 1, 2, 3])
  })
  test('no number, no steps', () => {
    expect(shadeSteps([[null, null]])).toBeNull()
  })
})

test('MD-0042 T2: the map names its zone, what was demanded and taken, and how far marks are apart', () => {
  const state = foldDemo('MD-0042')
  const [map] = surfaceMapsOf(state, attemptOf(state, '16', 2))
  if (!map) throw new Error('no map')
  // 219.2 mm round, a quarter turn: π × 219.2 / 4 = 172.2 mm
  expect(map.marks).toBe(
    'marks: 20 taken, 20 demanded (clause 11.3); 60 mm apart along at most; 172 mm apart round at most (diameter 219.2)',
  )
  for (const format of ['wide', 'narrow'] as const) {
    const picture = surfaceMapPicture(map, format)
    const words = picture.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])).join(' ')
    expect(words).toContain('Weakest zone A-6, B-6, C-6, D-6, E-6; lowest 69 at C-6')
    expect(words).toContain('70–75')
    expect(picture.shapes.some((shape) => shape.kind === 'segments' && shape.style === 'step')).toBe(true)
    expect(picture.shapes.some((shape) => shape.kind === 'segments' && shape.style === 'zone')).toBe(true)
  }
  expect(map.fact).toBe(attemptOf(state, '16', 2).records[0]?.fact.id)
})
