import { describe, expect, it } from 'vitest'
import { keyText } from '@/lib/capture/key-text'
import { type Ground, type Keying, keyMark, type MarkKey, NOT_KEYING } from '@/lib/capture/keyed-marks'
import { type Reading, showReading, type Unit } from '@/lib/domain/reading'

/** A hand over three marks: what stands at each, and whether the last key was refused. */
function startHand(unit: Unit = 'mm') {
  const readings = new Map<string, Reading>()
  const ground: Ground = { order: ['A', 'B', 'C'], unit, readingAt: (mark) => readings.get(mark) ?? null }
  let keying: Keying = NOT_KEYING
  const give = (pressed: MarkKey): boolean => {
    const answer = keyMark(keying, pressed, ground)
    keying = answer.keying
    if (answer.put?.reading) readings.set(answer.put.mark, answer.put.reading)
    else if (answer.put) readings.delete(answer.put.mark)
    return !answer.isRefused
  }
  return {
    go: (mark: string) => give({ kind: 'go', mark }),
    take: (reading: Reading | null) => give({ kind: 'take', reading }),
    key: (...keys: string[]) => keys.map((key) => give({ kind: 'key', key })).every(Boolean),
    at: () => keying.current,
    typed: () => keying.typed,
    last: () => keying.last,
    unreadable: () => keying.unreadable,
    shown: () => ground.order.map((mark) => (readings.has(mark) ? showReading(readings.get(mark) as Reading) : '')),
  }
}

describe('keying from mark to mark', () => {
  it('puts what is typed as soon as it is a reading, and goes on at next', () => {
    const hand = startHand()
    hand.go('A')
    expect(hand.key('7', '.', '4', 'next', '8', 'next')).toBe(true)
    expect(hand.shown()).toEqual(['7.4', '8', ''])
    expect([hand.at(), hand.last()]).toEqual(['C', 'B'])
  })

  it('undo takes back the last step: a character, the jump to the next mark, a special value, the value that was keyed over', () => {
    const hand = startHand()
    hand.go('A')
    hand.key('7', '5', 'next')
    expect(hand.at()).toBe('B')
    hand.key('undo')
    expect([hand.at(), hand.typed(), hand.last()]).toEqual(['A', '75', null])
    hand.key('undo')
    expect(hand.shown()).toEqual(['7', '', ''])
    hand.key('next')
    hand.take({ kind: 'through-wall' })
    expect(hand.shown()).toEqual(['7', 'TW', ''])
    hand.key('undo')
    expect([hand.at(), ...hand.shown()]).toEqual(['B', '7', '', ''])
    hand.go('A')
    hand.key('9')
    expect(hand.shown()).toEqual(['9', '', ''])
    hand.key('undo')
    expect(hand.shown()).toEqual(['7', '', ''])
  })

  it('undo goes back to the very start and no further', () => {
    const hand = startHand()
    hand.go('A')
    hand.key('1', '2', 'next', '3', 'previous', 'next', 'next')
    for (let step = 0; step < 8; step += 1) expect(hand.key('undo')).toBe(true)
    expect(hand.at()).toBe(null)
    expect(hand.shown()).toEqual(['', '', ''])
    expect(hand.key('undo')).toBe(false)
  })

  it('goes back to the mark before, and refuses before the first', () => {
    const hand = startHand()
    hand.go('B')
    expect(hand.key('5', 'previous')).toBe(true)
    expect([hand.at(), ...hand.shown()]).toEqual(['A', '', '5', ''])
    expect(hand.key('previous')).toBe(false)
    expect(hand.at()).toBe('A')
  })

  it('stays at a mark whose text is no reading, and says which', () => {
    const hand = startHand()
    hand.go('A')
    hand.key('<')
    expect(hand.key('next')).toBe(false)
    expect([hand.at(), hand.unreadable()]).toEqual(['A', '<'])
    expect(hand.key('3', 'next')).toBe(true)
    expect(hand.shown()).toEqual(['< 3', '', ''])
  })

  it('reads the letters of through-wall and no access from a keyboard', () => {
    const hand = startHand()
    hand.go('A')
    hand.key('t', 'w', 'next', 'N', 'A', 'next', '-', 'next')
    expect(hand.shown()).toEqual(['TW', 'NA', '–'])
    expect(hand.at()).toBe(null)
  })

  it('clear takes the reading of a mark away, and undo brings it back', () => {
    const hand = startHand()
    hand.go('A')
    hand.key('7', 'next')
    hand.go('A')
    expect(hand.key('clear')).toBe(true)
    expect(hand.shown()).toEqual(['', '', ''])
    hand.key('undo')
    expect(hand.shown()).toEqual(['7', '', ''])
  })

  it('a lone sign is never taken for not inspected where values lie below zero', () => {
    const hand = startHand('degC')
    hand.go('A')
    hand.key('sign')
    expect(hand.shown()).toEqual(['', '', ''])
    expect(hand.key('next')).toBe(false)
    hand.key('4')
    expect(hand.shown()).toEqual(['-4', '', ''])
    hand.key('sign')
    expect(hand.shown()).toEqual(['4', '', ''])
  })
})

describe('one key more', () => {
  const ALL = { point: true, sign: true, limits: true }
  it.each([
    ['', '7', '7'],
    ['7', '.', '7.'],
    ['7.', '.', null],
    ['12', 'sign', '-12'],
    ['-12', 'sign', '12'],
    ['12', 'limit', '<12'],
    ['<12', 'limit', '>12'],
    ['>12', 'limit', '12'],
    ['-1', 'limit', null],
    ['<1', 'sign', null],
    ['3', '<', null],
    ['3', 'x', null],
    ['123456789012', '3', null],
  ])('%j and %j give %j', (typed, key, text) => {
    expect(keyText(typed, key, ALL)).toBe(text)
  })
  it('refuses what a field does not take', () => {
    const none = { point: false, sign: false, limits: false }
    expect(['.', 'sign', 'limit', '<', '-'].map((key) => keyText('', key, none))).toEqual([
      null,
      null,
      null,
      null,
      null,
    ])
  })
})
