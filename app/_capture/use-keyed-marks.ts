'use client'
import { useCallback, useEffect, useRef, useState } from 'react'
import { keyMark, type MarkKey, NOT_KEYING, type Put } from '@/lib/capture/keyed-marks'
import type { Reading, Unit } from '@/lib/domain/reading'
import type { MarkedReading } from '@/lib/domain/records/common'
import type { Moment } from '@/lib/domain/time'
import { shakeKey } from './shake-key'

/** Keys of a keyboard that key a mark: digits, point, limits, a dash, and the letters of TW (through-wall) and NA (no access). */
export const KEYED = /^[0-9.<>twna-]$/i
const NAMED: Readonly<Record<string, string>> = { Enter: 'next', Backspace: 'undo', Delete: 'clear' }

/** Keying from mark to mark over the values of a form: keys in, readings at their marks out, each felt by the hand. `tell` is told the mark that is being typed, and null once it is left. */
export function useKeyedMarks(
  order: readonly string[],
  value: readonly MarkedReading[],
  change: (next: MarkedReading[]) => void,
  unit: Unit,
  stamp: () => Moment | null,
  tell: (typed: string | null) => void,
) {
  const [keying, setKeying] = useState(NOT_KEYING)
  // two keys may come within one drawing: each sees what the one before left
  const latest = useRef({ value, keying })
  latest.current.value = value
  const put = useCallback(
    ({ mark, reading }: Put) => {
      const others = latest.current.value.filter((one) => one.mark !== mark)
      const before = latest.current.value.find((one) => one.mark === mark)
      const at = stamp()
      const fresh = reading && { mark, reading, ...(at === null ? {} : { at }) }
      const next = reading && fresh ? [...others, before ? { ...before, reading } : fresh] : [...others]
      next.sort((a, b) => order.indexOf(a.mark) - order.indexOf(b.mark))
      latest.current.value = next
      change(next)
    },
    [change, order, stamp],
  )
  const give = useCallback(
    (pressed: MarkKey) => {
      const answer = keyMark(latest.current.keying, pressed, {
        order,
        unit,
        readingAt: (mark) => latest.current.value.find((one) => one.mark === mark)?.reading ?? null,
      })
      latest.current.keying = answer.keying
      setKeying(answer.keying)
      if (answer.put) put(answer.put)
      tell(answer.keying.typed === '' ? null : answer.keying.current)
      if (pressed.kind !== 'go') shakeKey(answer.isRefused ? 'refused' : 'taken')
    },
    [order, put, tell, unit],
  )
  useEffect(() => () => tell(null), [tell])
  const go = useCallback((mark: string | null) => give({ kind: 'go', mark }), [give])
  const press = useCallback((key: string) => give({ kind: 'key', key: NAMED[key] ?? key }), [give])
  const special = useCallback((reading: Reading | null) => give({ kind: 'take', reading }), [give])
  return { ...keying, go, press, special }
}
