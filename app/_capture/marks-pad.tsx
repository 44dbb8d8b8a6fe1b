'use client'
import { useCallback, useState } from 'react'
import { canBeNegative } from '@/lib/capture/key-text'
import { type Reading, showReadingUnit, type Unit } from '@/lib/domain/reading'
import { KeyPad } from './key-pad'
import { ReadBack } from './read-back'
import { SpecialValue } from './special-value'

const SIDE = [
  { name: 'undo', label: 'Undo the last key', shown: 'Undo' },
  { name: 'special', label: 'Value is special', shown: 'Value is special…' },
  { name: 'previous', label: 'Mark before', shown: 'Mark before' },
  { name: 'next', label: 'Next mark', shown: 'Next mark' },
] as const

/** The keys under a grid of marks: where one is, what is typed, what was taken last, and values that are no number. */
export function MarksPad({
  mark,
  typed,
  unit,
  last,
  press,
  special,
  close,
}: {
  mark: string
  typed: string
  unit: Unit
  last: { mark: string; reading: Reading } | null
  press: (key: string) => void
  special: (reading: Reading | null) => void
  close: () => void
}) {
  const [isChoosing, setChoosing] = useState(false)
  const pressed = useCallback((key: string) => (key === 'special' ? setChoosing(true) : press(key)), [press])
  return (
    <div className="pad-dock">
      <div className="pad-head">
        <p className="eyebrow" aria-live="polite">
          Mark {mark}
          {typed !== '' ? `: ${typed}` : ''}
        </p>
        <button type="button" className="button plain" onClick={close}>
          Close the keys
        </button>
      </div>
      <ReadBack what={last?.mark ?? null} value={last ? showReadingUnit(last.reading) : null} />
      <KeyPad press={pressed} side={SIDE} lead={canBeNegative(unit) ? 'sign' : 'limit'} />
      {isChoosing ? (
        <SpecialValue
          mark={mark}
          close={() => setChoosing(false)}
          choose={(reading) => {
            special(reading)
            setChoosing(false)
          }}
        />
      ) : null}
    </div>
  )
}
