import { describe, expect, it } from 'vitest'
import { decimal } from '@/lib/domain/decimal'
import { measured } from '@/lib/domain/reading'
import type { Rule } from '@/lib/domain/specification'
import { at } from './judge-fixtures'
import { HARD, judge, plug } from './wrap-fixtures'

describe('plug, plate and band of MD-0044', () => {
  it('is hard after 25.7 min at 18.2 °C', () => {
    expect(judge(HARD, [plug()])).toMatchObject({
      verdict: 'pass',
      found: '09:06 to 09:34 = 28 min, ≥ 25.7 min at 18.2 °C',
    })
    expect(judge(HARD, [plug({ judgedHardAt: at('05-14 09:31') })])).toMatchObject({
      verdict: 'fail',
      findings: [{ code: 'hardening-too-short', found: '25 min', limit: '≥ 25.7 min at 18.2 °C' }],
    })
    expect(judge(HARD, [plug({ ambient: measured('25.1', 'degC') })]).findings[0]?.code).toBe('too-warm')
    expect(judge(HARD, [plug({ ambient: measured('11.9', 'degC') })]).findings[0]?.code).toBe('temp-below-table')
  })

  it.each([
    ['500', 'pass', undefined],
    ['70.7', 'pass', undefined],
    ['70.6', 'fail', 'plug-too-small'],
  ] as const)('putty %s mm³ of 70.7 needed', (used, verdict, code) => {
    const result = judge({ kind: 'plug-amount', timesHoleVolume: decimal('2.5') }, [
      plug({ puttyUsed: measured(used, 'mm3') }),
    ])
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
    expect(result.found).toContain('≥ 70.7 mm³')
  })

  it.each([
    ['425', '60', 'pass', undefined],
    ['424.5', '60', 'pass', undefined],
    ['424.4', '60', 'fail', 'band-too-short'],
    ['425', '45', 'pass', undefined],
    ['425', '44.9', 'fail', 'tail-too-short'],
  ] as const)('band cut %s, tail %s', (cut, tail, verdict, code) => {
    const result = judge({ kind: 'band-length', tailAtLeast: decimal('45') }, [
      plug({ bandCut: measured(cut, 'mm'), bandTail: measured(tail, 'mm') }),
    ])
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
    if (tail === '60') expect(result.found).toContain('≥ 424.4 mm')
  })

  it('demands non-sparking tools only where the area asks for them', () => {
    const yes: Rule = { kind: 'yes', flag: 'non-sparking-tools' }
    expect(judge(yes, [plug({ nonSparkingTools: 'no' })])).toMatchObject({
      verdict: 'fail',
      findings: [{ code: 'stated-no' }],
    })
    expect(judge(yes, [plug({ nonSparkingTools: 'no', nonSparkingAsked: 'no' })])).toMatchObject({
      verdict: 'pass',
      found: 'not asked for',
    })
    expect(judge(yes, [])).toMatchObject({ verdict: 'not proven', findings: [{ code: 'statement-missing' }] })
  })
})
