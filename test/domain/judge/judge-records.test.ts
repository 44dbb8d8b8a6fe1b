import { describe, expect, it } from 'vitest'
import type { PhotoState } from '@/lib/domain/fold/repair-state'
import { judgeCriterion } from '@/lib/domain/judge/judge-criterion'
import type { Rule } from '@/lib/domain/specification'
import { at, contextOf, criterion, fact, limit, person, point, recordedAt, row, stream } from './judge-fixtures'
import { codeOf, judge } from './judged-code'

describe('permit', () => {
  const permit = recordedAt(
    '05-12 07:20',
    { type: 'permit', permitNo: 'P-1', validFrom: at('05-12 07:00'), validTo: at('05-12 18:00') },
    { point: point('02') },
  )
  const primer = (when: string) => recordedAt(when, { type: 'primer', brushedAt: at(when) })
  it.each([
    ['05-12 11:40', 'pass', undefined],
    ['05-12 18:00', 'pass', undefined],
    ['05-12 18:01', 'fail', 'permit-not-covering'],
    ['05-12 06:59', 'fail', 'permit-not-covering'],
  ] as const)('%s', (when, verdict, code) => {
    expect(codeOf({ kind: 'permit-valid' }, [primer(when)], { otherRecords: [permit] })).toEqual([verdict, code])
  })
  it('is missing, or nothing was recorded', () => {
    expect(codeOf({ kind: 'permit-valid' }, [primer('05-12 11:40')])).toEqual(['not proven', 'permit-missing'])
    expect(codeOf({ kind: 'permit-valid' }, [], { otherRecords: [permit] })).toEqual(['not proven', 'no-readings'])
  })
})

describe('photos that the plan demands', () => {
  const rule: Rule = { kind: 'photos' }
  const photo = (no: number, changes: Partial<PhotoState> = {}) =>
    ({
      fact: { id: fact(no), body: { demand: 'gauge' } },
      judged: null,
      flags: [],
      ...changes,
    }) as unknown as PhotoState
  const refused = { judged: { body: { decision: 'not accepted' } } } as unknown as Partial<PhotoState>
  const demanding = (photos: PhotoState[]) => {
    const context = contextOf([criterion(rule, '17')], [], { photos })
    return judgeCriterion(criterion(rule, '17'), {
      ...context,
      point: { ...context.point, photos: [{ id: 'gauge', show: 'gauge on a mark', atLeast: 2 }] },
    })
  }
  it('counts those that are not refused', () => {
    expect(demanding([photo(1), photo(2)])).toMatchObject({ verdict: 'pass', found: '1 of 1 demanded' })
    expect(demanding([photo(1), photo(2, refused)])).toMatchObject({
      verdict: 'not proven',
      findings: [{ code: 'photo-missing', found: '1', limit: '2', detail: 'gauge on a mark' }],
    })
    expect(codeOf(rule, [])).toEqual(['pass', undefined])
  })
})

describe('order of facts', () => {
  const rule: Rule = { kind: 'order-of-facts' }
  const ply = (plyNo: number, from: string, to: string) =>
    recordedAt(from, { type: 'ply', plyNo, mixNo: 'M1', startedAt: at(from), endedAt: at(to) }, { point: point('14') })
  const mix = recordedAt('05-12 11:40', {
    type: 'resin-mix',
    mixNo: 'M1',
    startedAt: at('05-12 11:40'),
    usedBy: at('05-12 12:00'),
  })
  const hard = (when: string) => recordedAt(when, { type: 'hardness', takenAt: at(when) })
  it.each([
    [[mix, ply(1, '05-12 11:45', '05-12 11:50'), ply(2, '05-12 11:50', '05-12 11:55')], [], 'pass', undefined],
    [[mix, ply(1, '05-12 11:39', '05-12 11:50')], [], 'fail', 'ply-before-its-mix'],
    [[ply(1, '05-12 11:45', '05-12 11:44')], [], 'fail', 'ply-reversed'],
    [[ply(1, '05-12 11:50', '05-12 11:55'), ply(2, '05-12 11:45', '05-12 11:49')], [], 'fail', 'plies-backwards'],
    [[hard('05-12 12:20')], [ply(1, '05-12 12:15', '05-12 12:21')], 'fail', 'hardness-before-last-ply'],
    [[hard('05-12 12:21')], [ply(1, '05-12 12:15', '05-12 12:21')], 'pass', undefined],
    [
      [recordedAt('05-12 09:36', { type: 'arrest-watch', startedAt: at('05-12 09:36'), endedAt: at('05-12 09:30') })],
      [],
      'fail',
      'watch-reversed',
    ],
    [
      [
        recordedAt('05-12 11:40', {
          type: 'resin-mix',
          mixNo: 'M1',
          startedAt: at('05-12 11:40'),
          usedBy: at('05-12 11:39'),
        }),
      ],
      [],
      'fail',
      'used-before-mixed',
    ],
    [[], [], 'not proven', 'no-readings'],
  ] as const)('%#', (records, otherRecords, verdict, code) => {
    expect(codeOf(rule, [...records], { otherRecords: [...otherRecords] })).toEqual([verdict, code])
  })
})

describe('filler', () => {
  const rows = (text: string[]) =>
    Object.fromEntries(['+25', '0', '-25'].map((name, index) => [name, text[index] ?? '']))
  const marks = (text: string[]) =>
    Object.entries(rows(text)).flatMap(([name, line]) =>
      row('mm', line).map((one, index) => ({ ...one, mark: `${name}@${index + 5}` })),
    )
  const filler = recordedAt('05-12 10:16', {
    type: 'filler-thickness',
    mixNo: 'F1',
    holeMark: '0@6',
    placedAt: at('05-12 10:16'),
    measuredAt: at('05-12 11:30'),
    placedBy: person('T1'),
    instrument: stream('instrument:SP-07'),
    before: marks(['0.0 -0.2 0.1', '0.3 -5.1 0.2', '0.0 0.0 0.0']),
    after: marks(['3.9 4.0 3.7', '4.7 2.5 4.3', '3.7 4.3 -']),
  })
  it('is after - before at each mark: centre -5.1 to +2.5 is 7.6', () => {
    expect(judge({ kind: 'each', quantity: 'filler-over-hole', min: limit('7.0', 'mm') }, [filler])).toMatchObject({
      verdict: 'pass',
      figures: { worst: '7.6', worstMark: '0@6' },
    })
    const ring = judge({ kind: 'each', quantity: 'filler-on-ring', min: limit('3.0', 'mm') }, [filler])
    expect(ring).toMatchObject({
      verdict: 'not proven',
      figures: { worst: '3.6', count: 7 },
      findings: [{ code: 'reading-missing', mark: '-25@7' }],
    })
  })
})
