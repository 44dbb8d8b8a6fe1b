import { describe, expect, test } from 'vitest'
import { climateStanding } from '@/lib/domain/working/climate-standing'
import { attemptOf, foldDemo } from '@/test/demo/folded-demo'

describe('climate as last read', () => {
  test('MD-0043 at 12:50: 18.0 °C, 86 %, steel 16.5 °C give dew point 15.6 °C and margin 0.9 K, counting for 2 h', () => {
    const state = foldDemo('MD-0043')
    const standing = climateStanding(state, attemptOf(state, '07'))
    expect(standing?.dewPointC?.toFixed(1)).toBe('15.6')
    expect(standing?.coldest).toEqual({ clock: '6', shown: '16.5 °C', margin: '0.9' })
    expect(standing?.endsAt).toBe('2026-05-27T14:50:00+01:00')
    expect(standing?.validFor).toBe('120 min from the reading, clause 6.4')
  })
  test('MD-0042 at 10:55: the coldest of two places governs', () => {
    const state = foldDemo('MD-0042')
    expect(climateStanding(state, attemptOf(state, '07'))?.coldest).toMatchObject({ clock: '6', margin: '3.2' })
  })
  test('without a climate reading there is none, and without a window no end', () => {
    const state = foldDemo('MD-0042')
    expect(climateStanding(state, attemptOf(state, '16'))).toBeNull()
    expect(climateStanding({ ...state, specification: null }, attemptOf(state, '07'))).toMatchObject({
      endsAt: null,
      validFor: null,
    })
  })
})
