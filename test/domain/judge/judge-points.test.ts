import { describe, expect, it } from 'vitest'
import { decimal } from '@/lib/domain/decimal'
import { measured } from '@/lib/domain/reading'
import type { RecordOf } from '@/lib/domain/records/record'
import type { Rule } from '@/lib/domain/specification'
import { at, grid, limit, recordedAt, row } from './judge-fixtures'
import { codeOf, judge } from './judged-code'

describe('cleanliness grade', () => {
  const graded = (grade: string) => recordedAt('05-12 09:04', { type: 'cleanliness', grade })
  it.each([
    ['Sa 2½', ['Sa 2½'], 'pass', undefined],
    ['Sa 3', ['Sa 2½'], 'pass', undefined],
    ['Sa 2', ['Sa 2½'], 'fail', 'grade-below-limit'],
    ['St 3', ['Sa 2½'], 'not proven', 'grade-not-comparable'],
    ['St 3', ['Sa 2½', 'St 3'], 'pass', undefined],
    ['clean', ['Sa 2½'], 'not proven', 'grade-unknown'],
  ] as const)('%s against %s', (grade, grades, verdict, code) => {
    expect(codeOf({ kind: 'grade', grades: [...grades] }, [graded(grade)])).toEqual([verdict, code])
  })
})

describe('statements', () => {
  const look = (tapTested: 'yes' | 'no' | undefined) =>
    recordedAt('05-13 08:05', { type: 'visual', seenAt: at('05-13 08:05'), ...(tapTested ? { tapTested } : {}) })
  it.each([
    ['yes', 'pass', undefined],
    ['no', 'fail', 'stated-no'],
    [undefined, 'not proven', 'statement-missing'],
  ] as const)('%s', (value, verdict, code) => {
    expect(codeOf({ kind: 'yes', flag: 'tap-tested' }, [look(value)])).toEqual([verdict, code])
  })
  it('no is wanted where the rule is no; one yes among several fails', () => {
    expect(codeOf({ kind: 'no', flag: 'tap-tested' }, [look('no')])).toEqual(['pass', undefined])
    expect(codeOf({ kind: 'no', flag: 'tap-tested' }, [look('no'), look('yes')])).toEqual(['fail', 'stated-yes'])
  })
})

describe('visual findings', () => {
  const rule: Rule = { kind: 'findings', allowed: [{ finding: 'resin run', maxSize: decimal('10') }] }
  const look = (findings: [RecordOf<'visual'>['findings'][number]['kind'], string][], noFindings?: 'yes' | 'no') =>
    recordedAt('05-13 08:05', {
      type: 'visual',
      findings: findings.map(([kind, size]) => ({ kind, place: 'B-9', size: measured(size, 'mm') })),
      ...(noFindings ? { noFindings } : {}),
    })
  it.each([
    [look([['resin run', '8']], 'no'), 'pass', undefined],
    [look([['resin run', '10']], 'no'), 'pass', undefined],
    [look([['resin run', '10.1']], 'no'), 'fail', 'finding-too-large'],
    [look([['blister', '1']], 'no'), 'fail', 'finding-not-allowed'],
    [look([], 'yes'), 'pass', undefined],
    [look([]), 'not proven', 'statement-missing'],
    [look([['resin run', '8']], 'yes'), 'not proven', 'statement-contradicts'],
  ] as const)('%#', (record, verdict, code) => {
    expect(codeOf(rule, [record])).toEqual([verdict, code])
  })
})

describe('design envelope', () => {
  const mm = (text: string) => measured(text, 'mm')
  const envelope = {
    holeAxialMax: mm('6'),
    holeHoopMax: mm('5'),
    minWallAtBandEdge: mm('7.0'),
    diameterMin: mm('271'),
    diameterMax: mm('275'),
  }
  const wall = {
    12: '9.1 9.0 9.1 9.0 9.2',
    3: '8.8 8.6 8.4 8.7 8.9',
    6: '7.1 6.2 TW 6.0 7.3',
    9: '8.7 8.5 8.5 8.6 8.8',
  }
  const found = (changes: Partial<RecordOf<'defect'>> = {}) =>
    recordedAt('05-11 10:00', {
      type: 'defect',
      holeAxial: mm('4'),
      holeHoop: mm('3'),
      diameters: [mm('273.0'), mm('272.8')],
      wall: grid('mm', wall),
      grid: {
        stations: ['-130', '-65', '0', '65', '130'].map((fromLeak, index) => ({
          name: 'ABCDE'[index] ?? '',
          fromLeak: mm(fromLeak),
        })),
        clocks: ['12', '3', '6', '9'],
      },
      ...changes,
    })
  const design = { sheetNo: 'D-1', revision: 0, envelope } as RecordOf<'design'>
  it.each([
    [{}, 'pass', undefined],
    [{ holeAxial: mm('6') }, 'pass', undefined],
    [{ holeAxial: mm('6.1') }, 'fail', 'outside-envelope'],
    [{ diameters: [mm('275.1')] }, 'fail', 'outside-envelope'],
    [{ diameters: [mm('270.9')] }, 'fail', 'outside-envelope'],
    [{ wall: grid('mm', { ...wall, 6: '6.9 6.2 TW 6.0 7.3' }) }, 'fail', 'outside-envelope'],
    [{ wall: grid('mm', { ...wall, 6: 'NA 6.2 TW 6.0 7.3' }) }, 'not proven', 'measure-missing'],
    [{ diameters: [measured('10.75', 'in')] }, 'pass', undefined],
  ] as const)('%#', (changes, verdict, code) => {
    expect(codeOf({ kind: 'design-envelope' }, [found(changes as Partial<RecordOf<'defect'>>)], { design })).toEqual([
      verdict,
      code,
    ])
  })
  it('needs both records', () => {
    expect(codeOf({ kind: 'design-envelope' }, [found()])).toEqual(['not proven', 'design-missing'])
    expect(codeOf({ kind: 'design-envelope' }, [], { design })).toEqual(['not proven', 'defect-missing'])
  })
})

describe('limits of the design sheet', () => {
  const test = (pressure: string, unit: 'MPa' | 'bar' | 'psi' = 'MPa') =>
    recordedAt('05-13 09:30', {
      type: 'pressure-test',
      readings: [{ at: at('05-13 09:30'), pressure: measured(pressure, unit) }],
    })
  const rule: Rule = {
    kind: 'each',
    quantity: 'test-pressure',
    min: { from: 'design', value: 'designPressure', factor: decimal('1.1') },
  }
  const design = { designPressure: measured('1.35', 'MPa') } as RecordOf<'design'>
  it.each([
    [test('1.485'), 'pass', undefined],
    [test('1.484'), 'fail', 'reading-below-limit'],
    [test('1.486'), 'pass', undefined],
    [test('14.85', 'bar'), 'pass', undefined],
    [test('14.84', 'bar'), 'fail', 'reading-below-limit'],
    [test('215.3', 'psi'), 'fail', 'reading-below-limit'],
    [test('215.4', 'psi'), 'pass', undefined],
  ] as const)('1.1 × 1.35 MPa exactly: %#', (record, verdict, code) => {
    expect(codeOf(rule, [record], { design })).toEqual([verdict, code])
    expect(judge(rule, [record], { design }).limit).toBe('each ≥ 1.485 MPa (1.1 × design pressure 1.35 MPa)')
  })
  it('is not proven without the sheet, and never converts between hardness scales', () => {
    expect(codeOf(rule, [test('1.485')])).toEqual(['not proven', 'design-missing'])
    const shoreA = recordedAt('05-13 07:25', { type: 'hardness', readings: row('ShoreA', '99') })
    expect(codeOf({ kind: 'each', quantity: 'hardness', min: limit('74', 'ShoreD') }, [shoreA])).toEqual([
      'not proven',
      'unit-differs',
    ])
    expect(codeOf({ kind: 'mean', quantity: 'hardness', min: limit('74', 'ShoreD') }, [shoreA])).toEqual([
      'not proven',
      'unit-differs',
    ])
  })
})
