import { describe, expect, it } from 'vitest'
import { judgeCriterion } from '@/lib/domain/judge/judge-criterion'
import { isOfItsTaps } from '@/lib/domain/judge/judge-taps'
import { showFinding } from '@/lib/domain/judge/show-finding'
import { parseReading, type Reading, type Unit } from '@/lib/domain/reading'
import type { Rule, Specification } from '@/lib/domain/specification'
import { at, contextOf, criterion, limit, recordedAt, row, specificationOf, stream } from './judge-fixtures'

const read = (text: string, unit: Unit = 'ShoreD'): Reading => {
  const reading = parseReading(text, unit)
  if (!reading) throw new Error(`not a reading: ${text}`)
  return reading
}
const tapped = (text: string, taps: string) => ({ reading: read(text), taps: taps.split(' ').map((one) => read(one)) })

describe('a reading is the stated figure of its taps', () => {
  it.each([
    ['77', '76 77 78', true, true],
    ['77', '76 77 80', false, true],
    ['78', '76 77 80', true, false],
    ['77', '76 77', true, true],
    ['76', '76 77', false, false],
    ['76.5', '76 77', true, true],
    ['77.0', '76 77', false, false],
    ['76.33', '76 76 77', true, false],
    ['76.3', '76 76 77', true, false],
    ['76', '76 76 77', true, true],
    ['76.0', '9.5 76.0 100', false, true],
    ['-2', '-1 -2', true, true],
    ['TW', 'TW TW', true, true],
    ['TW', 'TW 3', false, false],
    ['77', '77 NA 77', false, false],
    ['77', '77 < 77', false, false],
  ])('%s of %s', (text, taps, isMean, isMedian) => {
    const one = tapped(text, taps.replaceAll('< ', '<'))
    expect([isOfItsTaps(one, 'mean'), isOfItsTaps(one, 'median')]).toEqual([isMean, isMedian])
  })

  it('is of no taps in another unit', () => {
    expect(isOfItsTaps({ reading: read('77'), taps: [read('77', 'Barcol')] }, 'mean')).toBe(false)
  })
})

describe('a criterion over readings with taps', () => {
  const each: Rule = { kind: 'each', quantity: 'hardness', min: limit('74', 'ShoreD') }
  const mean: Rule = { kind: 'mean', quantity: 'hardness', min: limit('74', 'ShoreD') }
  const judge = (rule: Rule, text: string, taps: string, tapRule: Specification['tapRule'] = 'mean') => {
    const [first, ...rest] = row('ShoreD', `${text} 80`)
    const readings = [{ mark: 'C-12', ...first, ...tapped(text, taps) }, ...rest]
    const record = recordedAt('05-13 07:25', {
      type: 'hardness',
      scale: 'ShoreD',
      readings,
      takenAt: at('05-13 07:25'),
      instrument: stream('instrument:HD-03'),
    })
    const criteria = [criterion(rule)]
    const specification = {
      stream: stream('specification:QP-T'),
      revision: 1,
      body: specificationOf(criteria, { tapRule }),
    }
    return judgeCriterion(criterion(rule), contextOf(criteria, [record], { specification }))
  }

  it.each([
    [each, '77', '76 77 78', 'mean', 'pass'],
    [each, '79', '76 77 78', 'mean', 'not proven'],
    [each, '77', '76 77 80', 'mean', 'not proven'],
    [each, '77', '76 77 80', 'median', 'pass'],
    [each, '73', '76 77 78', 'mean', 'fail'],
    [mean, '77', '76 77 78', 'mean', 'pass'],
    [mean, '79', '76 77 78', 'mean', 'not proven'],
  ] as const)('%#: %s', (rule, text, taps, tapRule, verdict) => {
    const result = judge(rule, text, taps, tapRule)
    expect(result.verdict).toBe(verdict)
    expect(result.findings.some((one) => one.code === 'reading-not-of-its-taps')).toBe(verdict !== 'pass')
  })

  it('says what the taps give', () => {
    const [finding] = judge(each, '79', '76 77 78').findings
    expect(finding && showFinding(finding)).toBe('79 at 1 is not the mean 77 Shore D of 76, 77, 78 (7.3).')
  })

  it('asks it of both heights behind a thickness of filler', () => {
    const height = (text: string, taps?: string[]) => ({
      mark: '0@6',
      reading: read(text, 'mm'),
      ...(taps ? { taps: taps.map((one) => read(one, 'mm')) } : {}),
    })
    const thickness = (before: string[]) =>
      judgeCriterion(
        criterion({ kind: 'each', quantity: 'filler-on-ring', min: limit('2', 'mm') }, '11'),
        contextOf(
          [criterion({ kind: 'each', quantity: 'filler-on-ring', min: limit('2', 'mm') }, '11')],
          [
            recordedAt('05-12 09:30', {
              type: 'filler-thickness',
              before: [height('1.0', before)],
              after: [height('4.0')],
              measuredAt: at('05-12 09:30'),
            }),
          ],
        ),
      ).verdict
    expect(thickness(['1.0', '1.0'])).toBe('pass')
    expect(thickness(['1.0', '1.4'])).toBe('not proven')
  })
})
