import { describe, expect, test } from 'vitest'
import { attemptOf, criterionOf, foldDemo } from './folded-demo'

const at = (clock: string) => foldDemo('MD-0043', `2026-05-27T${clock}:00+01:00`)
const state = foldDemo('MD-0043')

describe('MD-0043, attempt 1 on 2026-05-27', () => {
  test('11:04: points 05 to 10 are released, 11 up to its cure', () => {
    const names = ['05', '06', '07', '08', '09', '10', '11'].map((no) => attemptOf(at('11:04'), no).state)
    expect(names.slice(0, 6)).toEqual(Array(6).fill('released'))
  })

  test('11:10: the releases of 09 to 11 are withdrawn after the weep at C-6', () => {
    const noon = at('11:10')
    for (const no of ['09', '10', '11']) {
      const fallen = attemptOf(noon, no).releases
      expect(fallen.length).toBeGreaterThan(0)
      expect(fallen.map((one) => one.state)).toEqual(fallen.map(() => 'withdrawn'))
      expect(fallen[0]?.fell?.cause).toContain('C-6')
    }
  })

  test('11:16: the failed climate puts 05, 06 and 07 in question', () => {
    expect(['05', '06', '07'].map((no) => attemptOf(at('11:16'), no).state)).toEqual([
      'in question',
      'in question',
      'in question',
    ])
  })

  test('the window of the preparation lapsed at 12:35, which the release of 05 tells', () => {
    expect(state.windows.find((one) => one.criterion === '14.prep-window')).toMatchObject({
      state: 'lapsed',
      startedAt: '2026-05-27T08:50:00+01:00',
      endsAt: '2026-05-27T12:35:00+01:00',
    })
    expect(attemptOf(state, '05').releases.map((one) => [one.state, one.fell?.at])).toEqual([
      ['lapsed', '2026-05-27T12:35:00+01:00'],
      ['lapsed', '2026-05-27T12:35:00+01:00'],
    ])
  })

  test('the wrap was begun without the releases that it needed', () => {
    expect(attemptOf(state, '14').passedWithoutRelease.map((one) => one.hold)).toContain('13')
    expect(attemptOf(state, '13').state).toBe('passed without release')
  })

  test('margins 1.9 and 0.9 K and 86 % fail', () => {
    expect(criterionOf(state, '07.margin').findings.map((one) => one.found)).toEqual(['1.9 K', '0.9 K'])
    expect(criterionOf(state, '07.humidity').findings.map((one) => one.found)).toEqual(['86 %'])
  })

  test('a row of the filler was not measured: not proven, never a pass', () => {
    expect(criterionOf(state, '11.on-ring-count')).toMatchObject({ verdict: 'not proven', figures: { count: 5 } })
  })

  test('phone and tablet contradict each other at point 09 and nobody has chosen', () => {
    expect(state.conflicts.map((one) => [one.point, one.resolved])).toEqual([['09', null]])
  })

  test('TH-11 was refused, TH-12 taken; the tablet 7 min fast is told', () => {
    const record = attemptOf(state, '04').records[0]?.record
    const lines = record?.type === 'instruments' ? record.instruments.map((one) => [one.instrument, one.decision]) : []
    expect(lines).toContainEqual(['instrument:TH-11', 'refused'])
    expect(lines).toContainEqual(['instrument:TH-12', 'taken'])
    expect(criterionOf(state, '04.instruments').verdict).toBe('pass')
    expect(state.remarkable.some((one) => one.text.includes('tablet-wrenfield') && one.text.includes('7 min'))).toBe(
      true,
    )
  })

  test('on hold, NCR-0009 in action and blocking, attempt 2 not opened', () => {
    expect(state.status).toBe('on hold')
    expect(state.nonconformances).toMatchObject([{ number: 'NCR-0009', state: 'action in progress', isOpen: true }])
    expect(state.points.every((point) => point.attempts.length === 1)).toBe(true)
  })

  test('its photo of point 05 is the very picture of MD-0042, point 05', () => {
    const flags = attemptOf(state, '05').photos.flatMap((photo) =>
      photo.flags.filter((flag) => flag.kind === 'exact copy').map((flag) => [flag.other?.repair, flag.other?.point]),
    )
    expect(flags).toEqual([['repair:MD-0042', '05']])
    expect(state.remarkable.map((one) => one.text)).toContain(
      'Photo of point 05: exact copy of an earlier one at MD-0042, point 05; not yet decided.',
    )
    expect(criterionOf(state, '05.photos').verdict).toBe('pass')
    expect(criterionOf(foldDemo('MD-0042'), '05.photos').verdict).toBe('pass')
  })
})

test('a late entry: ply 6 of MD-0041, keyed the next morning from the paper tally and signed', () => {
  const late = attemptOf(foldDemo('MD-0041'), '14').records.filter((one) => one.late)
  expect(late.map((one) => (one.record.type === 'ply' ? one.record.plyNo : null))).toEqual([6])
  expect(late[0]?.fact).toMatchObject({
    observedAt: '2026-05-12T12:00:00+01:00',
    enteredAt: '2026-05-13T06:50:00+01:00',
    late: { source: 'paper tally' },
  })
  expect(late[0]?.signedBy).toHaveLength(3)
})
