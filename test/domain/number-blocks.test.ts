import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type StreamId, streamOf } from '@/lib/domain/facts/fact'
import {
  blockOf,
  type NumberBlock,
  nextBlock,
  numberAt,
  numbersLeft,
  partsOfNumber,
} from '@/lib/domain/numbers/number-blocks'
import { runsAsked } from '@/test/runs'

const PROJECT = streamOf('project', 'P-1')
const deviceOf = (no: number): StreamId => streamOf('device', `d-${no}`)
const block = (device: number, from: number, to: number, prefix = 'MD-'): NumberBlock => ({
  device: deviceOf(device),
  project: PROJECT,
  prefix,
  digits: 4,
  from,
  to,
})

describe('blocks of repair numbers', () => {
  test('a number is read in one way, and written as it is chalked', () => {
    expect(partsOfNumber('MD-0042')).toEqual({ prefix: 'MD-', index: 42, digits: 4 })
    expect(['MD', '0042', 'MD-1234567', ''].map(partsOfNumber)).toEqual([null, null, null, null])
    expect([numberAt(block(1, 1, 9), 42), numberAt({ prefix: 'S2/', digits: 2 }, 1042)]).toEqual(['MD-0042', 'S2/1042'])
  })

  test('the next block lies behind what repairs bear and what is allotted, written as before', () => {
    const ask = { prefix: 'MD-', digits: 4, count: 10 }
    const next = (blocks: NumberBlock[], borne: string[]) => nextBlock(ask, blocks, borne)
    expect(next([], [])).toEqual({ ok: true, value: { prefix: 'MD-', digits: 4, from: 1, to: 10 } })
    expect(next([], ['MD-041', 'XX-900'])).toMatchObject({ value: { digits: 3, from: 42, to: 51 } })
    expect(next([block(1, 40, 60)], ['md-0041'])).toMatchObject({ value: { from: 61, to: 70 } })
    expect(next([block(1, 1, 5)], ['MD-0100'])).toMatchObject({ value: { from: 101 } })
    expect(next([], ['MD-999990'])).toEqual({ ok: false, error: { code: 'numbers-exhausted', last: 999_990 } })
  })

  test('a number lies in a block however its zeros and letters are written', () => {
    const blocks = [block(1, 40, 49), block(2, 50, 59)]
    expect(
      ['MD-0040', 'md-49', 'MD-00050', 'MD-0060', 'XD-0041', 'MD-x'].map((one) => blockOf(blocks, one)?.device ?? null),
    ).toEqual([deviceOf(1), deviceOf(1), deviceOf(2), null, null, null])
  })

  test('left on a device is what no repair bears', () => {
    const left = numbersLeft(
      [block(1, 1, 3), block(2, 4, 5), block(1, 6, 6)],
      deviceOf(1),
      new Set(['MD-2', 'MD-0005']),
    )
    expect(left.map((one) => one.number)).toEqual(['MD-0001', 'MD-0003', 'MD-0006'])
  })

  const Step = fc.oneof(
    fc.record({
      act: fc.constant('allot' as const),
      device: fc.nat(4),
      prefix: fc.constantFrom('MD-', 'md-', 'S2.'),
      count: fc.integer({ min: 1, max: 50 }),
    }),
    fc.record({ act: fc.constant('open offline' as const), device: fc.nat(4), pick: fc.nat(60) }),
    fc.record({
      act: fc.constant('open online' as const),
      device: fc.nat(4),
      prefix: fc.constantFrom('MD-', 'Md-', 'S2.'),
      index: fc.integer({ min: 1, max: 120 }),
    }),
    fc.record({ act: fc.constant('contact' as const), device: fc.nat(4) }),
  )

  test('any devices, any order of allotments, openings and contacts: never one number twice, and none offline is refused', () => {
    fc.assert(
      fc.property(fc.array(Step, { maxLength: 80 }), (steps) => {
        const blocks: NumberBlock[] = []
        const record = new Map<string, number>()
        const chalked = new Map<string, number>()
        const taken = new Map<number, { blocks: NumberBlock[]; known: Set<string> }>()
        const waiting = new Map<number, string[]>()
        const plain = (number: string) =>
          JSON.stringify([partsOfNumber(number)?.prefix.toLowerCase(), partsOfNumber(number)?.index])
        const chalk = (number: string, device: number) => {
          expect(chalked.has(plain(number)), `${number} is chalked once`).toBe(false)
          chalked.set(plain(number), device)
        }
        const receive = (number: string, device: number): boolean => {
          const of = blockOf(blocks, number)
          if (record.has(plain(number)) || (of && of.device !== deviceOf(device))) return false
          record.set(plain(number), device)
          return true
        }
        const contact = (device: number) => {
          for (const number of waiting.get(device) ?? [])
            expect(receive(number, device), `${number} is received`).toBe(true)
          waiting.set(device, [])
        }
        const numbers: string[] = []
        for (const step of steps) {
          const { device } = step
          if (step.act === 'allot') {
            const next = nextBlock({ ...step, digits: 4 }, blocks, numbers)
            if (next.ok) blocks.push({ device: deviceOf(device), project: PROJECT, ...next.value })
            taken.set(device, { blocks: [...blocks], known: new Set(numbers) })
          } else if (step.act === 'open offline') {
            const mine = taken.get(device)
            const own = waiting.get(device) ?? []
            const left = mine
              ? numbersLeft(
                  mine.blocks,
                  deviceOf(device),
                  new Set([...mine.known, ...numbers.filter((one) => chalked.get(plain(one)) === device), ...own]),
                )
              : []
            const number = left[step.pick % Math.max(1, left.length)]?.number
            if (!number) continue
            chalk(number, device)
            waiting.set(device, [...own, number])
          } else if (step.act === 'open online') {
            const number = numberAt({ prefix: step.prefix, digits: 4 }, step.index)
            // a number that this device chalked without a network goes up under its own entry
            if (chalked.has(plain(number)) && chalked.get(plain(number)) === device) continue
            if (receive(number, device)) {
              chalk(number, device)
              numbers.push(number)
            }
          } else {
            const own = waiting.get(device) ?? []
            contact(device)
            numbers.push(...own)
          }
        }
        for (const device of waiting.keys()) contact(device)
        for (const [at, one] of blocks.entries())
          for (const other of blocks.slice(at + 1))
            if (one.prefix.toLowerCase() === other.prefix.toLowerCase())
              expect(one.to < other.from || other.to < one.from).toBe(true)
      }),
      { numRuns: runsAsked(300) },
    )
  })
})
