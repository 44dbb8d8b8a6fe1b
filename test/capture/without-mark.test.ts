import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { settledPart } from '@/lib/capture/settled-part'
import { withoutMark } from '@/lib/capture/without-mark'
import { parseReading } from '@/lib/domain/reading'

const reading = (text: string) => parseReading(text, 'ShoreD')
const at = (mark: string, text: string) => ({ mark, reading: reading(text) })

describe('what is being typed at a mark', () => {
  it('is left out of its own list and nowhere else', () => {
    const values = { readings: [at('A1', '7'), at('A2', '78')], others: [at('A1', '70')], remark: 'dry' }
    expect(withoutMark(values, { path: 'readings', mark: 'A1' })).toEqual({
      readings: [at('A2', '78')],
      others: [at('A1', '70')],
      remark: 'dry',
    })
  })

  it('is left out of a list within an entry of a list', () => {
    const values = {
      plies: [
        { no: 1, spots: [at('S1', '4')] },
        { no: 2, spots: [at('S1', '5')] },
      ],
    }
    expect(withoutMark(values, { path: 'plies.1.spots', mark: 'S1' })).toEqual({
      plies: [
        { no: 1, spots: [at('S1', '4')] },
        { no: 2, spots: [] },
      ],
    })
  })

  it('leaves values as they are where nothing is typed or no such list is there', () => {
    const values = { readings: [at('A1', '7')] }
    expect(withoutMark(values, null)).toBe(values)
    expect(withoutMark(values, { path: 'spots', mark: 'A1' })).toEqual(values)
    expect(withoutMark(values, { path: 'readings.0.mark.x', mark: 'A1' })).toEqual(values)
  })

  it('never changes what is kept: the form has the mark as it was', () => {
    const marks = fc.uniqueArray(fc.constantFrom('A1', 'A2', 'B1', 'B2'), { minLength: 1 })
    fc.assert(
      fc.property(marks, fc.nat(3), (names, pick) => {
        const values = { type: 'hardness', readings: names.map((one) => at(one, '78')) }
        const before = structuredClone(values)
        const mark = names[pick % names.length] as string
        const judged = withoutMark(values, { path: 'readings', mark }) as typeof values
        expect(values).toEqual(before)
        expect(judged.readings.map((one) => one.mark)).toEqual(names.filter((one) => one !== mark))
        const settled = settledPart('hardness', judged)
        expect('readings' in settled ? settled.readings : []).toEqual(judged.readings)
      }),
    )
  })
})
