'use client'
import { useCallback, useRef, useState } from 'react'
import { parseReading, type Reading, type Unit } from '@/lib/domain/reading'
import type { MarkedReading } from '@/lib/domain/records/common'
import type { Moment } from '@/lib/domain/time'

/** Characters of a reading: digits, point, limits, and the letters of TW (through-wall) and NA (no access). */
export const KEYED = /^[0-9.<>twna-]$/i

/**
 * Keying from mark to mark: one character at a time into the current mark; Enter takes the value and goes on.
 * What is being typed is taken as soon as it is a reading, so that nothing is lost when the screen locks; it can be keyed over until then.
 */
export function useKeyedMarks(
  order: readonly string[],
  value: readonly MarkedReading[],
  change: (next: MarkedReading[]) => void,
  unit: Unit,
  stamp: () => Moment,
) {
  const [current, setCurrent] = useState<string | null>(null)
  const [typed, setTyped] = useState('')
  const [problem, setProblem] = useState<string | null>(null)
  const latest = useRef(value)
  latest.current = value
  const put = useCallback(
    (mark: string, reading: Reading | null) => {
      const others = latest.current.filter((one) => one.mark !== mark)
      const before = latest.current.find((one) => one.mark === mark)
      const next = reading ? [...others, before ? { ...before, reading } : { mark, reading, at: stamp() }] : others
      next.sort((a, b) => order.indexOf(a.mark) - order.indexOf(b.mark))
      latest.current = next
      change(next)
    },
    [change, order, stamp],
  )
  const go = useCallback((mark: string | null) => {
    setCurrent(mark)
    setTyped('')
    setProblem(null)
  }, [])
  const nextMark = useCallback(() => {
    if (current === null) return go(order[0] ?? null)
    if (typed !== '' && !parseReading(typed, unit))
      return setProblem(`“${typed}” is no reading. Key digits with one point, or a special value.`)
    const place = order.indexOf(current)
    go(order[place + 1] ?? null)
  }, [current, go, order, typed, unit])
  const press = useCallback(
    (key: string) => {
      if (key === 'next' || key === 'Enter') return nextMark()
      if (current === null) return
      if (key === 'undo' || key === 'Backspace') {
        if (typed === '') return put(current, null)
        const shorter = typed.slice(0, -1)
        setTyped(shorter)
        return put(current, shorter === '' ? null : parseReading(shorter, unit))
      }
      if (!KEYED.test(key) || typed.length >= 12) return
      const text = typed + key.toUpperCase()
      setTyped(text)
      setProblem(null)
      put(current, parseReading(text, unit))
    },
    [current, nextMark, put, typed, unit],
  )
  const special = useCallback(
    (reading: Reading) => {
      if (current === null) return
      put(current, reading)
      go(order[order.indexOf(current) + 1] ?? null)
    },
    [current, go, order, put],
  )
  return { current, typed, problem, go, press, special }
}
