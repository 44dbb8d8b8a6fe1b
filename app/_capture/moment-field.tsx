'use client'
import { useId, useState } from 'react'
import { type Control, type FieldValues, useController } from 'react-hook-form'
import { dayOf, Moment, showMoment } from '@/lib/domain/time'
import { useCapture } from './capture-context'
import { FieldShell } from './field-shell'
import { readNow } from './read-now'

type Keying = { day: string; clock: string }

/** A time, stamped by a tap or keyed. Keying keeps the site's UTC offset; an earlier time makes the entry a late one. */
export function MomentField({
  control,
  path,
  label,
  hint,
  optional,
}: {
  control: Control<FieldValues>
  path: string
  label: string
  hint?: string | undefined
  optional?: boolean | undefined
}) {
  const id = useId()
  const { utcOffset, clockKind, isFromPaper = false } = useCapture()
  const { field, fieldState } = useController({ control, name: path })
  // on paper the time stands already: it is keyed, and today is no guess at its day
  const [keying, setKeying] = useState<Keying | null>(isFromPaper ? { day: '', clock: '' } : null)
  const value = Moment.safeParse(field.value).success ? String(field.value) : ''
  const key = (next: Keying) => {
    setKeying(next)
    const clock = next.clock.length === 5 ? `${next.clock}:00` : next.clock
    field.onChange(next.day !== '' && clock.length === 8 ? `${next.day}T${clock}${utcOffset}` : undefined)
  }
  const openKeys = async () => {
    if (keying) return setKeying(null)
    setKeying(
      value === ''
        ? { day: isFromPaper ? '' : dayOf(await readNow(utcOffset, clockKind)), clock: '' }
        : { day: dayOf(value), clock: value.slice(11, 19) },
    )
  }
  return (
    <FieldShell id={id} as="fieldset" label={label} hint={hint} optional={optional} error={fieldState.error}>
      <div className="row">
        {isFromPaper ? null : (
          <button
            type="button"
            className="button"
            ref={field.ref}
            aria-label={`Stamp now: ${label}`}
            onClick={async () => {
              setKeying(null)
              field.onChange(await readNow(utcOffset, clockKind))
            }}
          >
            Now
          </button>
        )}
        <button
          type="button"
          className="button plain"
          aria-expanded={keying !== null}
          aria-label={`Key the time: ${label}`}
          onClick={openKeys}
        >
          Key the time
        </button>
        <output className="nowrap">{value === '' ? 'no time yet' : showMoment(value)}</output>
        {value !== '' && optional ? (
          <button
            type="button"
            className="button plain"
            aria-label={`Clear: ${label}`}
            onClick={() => {
              setKeying(null)
              field.onChange(undefined)
            }}
          >
            Clear
          </button>
        ) : null}
      </div>
      {keying ? (
        <div className="row">
          <label className="field">
            Day
            <input
              type="date"
              aria-label={`Day: ${label}`}
              value={keying.day}
              onChange={(event) => key({ ...keying, day: event.target.value })}
            />
          </label>
          <label className="field">
            Time
            <input
              type="time"
              step={1}
              aria-label={`Time: ${label}`}
              value={keying.clock}
              onChange={(event) => key({ ...keying, clock: event.target.value })}
            />
          </label>
          <span className="quiet">{utcOffset}</span>
        </div>
      ) : null}
    </FieldShell>
  )
}
