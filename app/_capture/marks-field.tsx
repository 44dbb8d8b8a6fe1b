'use client'
import { useCallback, useContext, useMemo, useState } from 'react'
import { type Control, type FieldValues, useController } from 'react-hook-form'
import type { MarkShape } from '@/lib/capture/mark-shape'
import { type Reading, showReading, showReadingUnit, showUnit, type Unit } from '@/lib/domain/reading'
import type { MarkedReading } from '@/lib/domain/records/common'
import { instantOf, momentOf } from '@/lib/domain/time'
import { useCapture } from './capture-context'
import { messageOf } from './field-shell'
import { MarkCell } from './mark-cell'
import { MarksPad } from './marks-pad'
import { MarksTally } from './marks-tally'
import { ReadBack } from './read-back'
import { TellTypedMark } from './typed-mark'
import { useFollowedCells } from './use-followed-cells'
import { KEYED, useKeyedMarks } from './use-keyed-marks'

/** A chalk grid keyed from mark to mark with Enter or the thumb's own keys. Never filled beforehand. */
export function MarksField({
  control,
  path,
  label,
  shape,
  units,
  quantity,
  failing,
}: {
  control: Control<FieldValues>
  path: string
  label: string
  shape: MarkShape
  units: readonly [Unit, ...Unit[]]
  quantity: string
  failing: ReadonlySet<string>
}) {
  const { utcOffset, clockKind, judge, isFromPaper = false } = useCapture()
  // A demonstration or test has a clock of its own: readings are stamped as far from the page's moment as they were keyed after it.
  const [aheadMs] = useState(() => (clockKind === 'real' ? 0 : instantOf(judge.asOf) - Date.now()))
  const { field, fieldState } = useController({ control, name: path })
  const value = useMemo(() => (Array.isArray(field.value) ? (field.value as MarkedReading[]) : []), [field.value])
  const order = useMemo(() => shape.marks.flat(), [shape])
  // The unit of what is keyed already stays: a reading is never converted, and one grid is not read in two units.
  const [chosen, setUnit] = useState<Unit | null>(null)
  const keyed = value.flatMap(({ reading }) => ('unit' in reading ? [reading.unit] : []))[0]
  const unit = keyed ?? (chosen !== null && units.includes(chosen) ? chosen : units[0])
  const stamp = useCallback(
    () => (isFromPaper ? null : momentOf(Date.now() + aheadMs, utcOffset)),
    [aheadMs, isFromPaper, utcOffset],
  )
  const tellTyped = useContext(TellTypedMark)
  const tell = useCallback((mark: string | null) => tellTyped(mark === null ? null : { path, mark }), [tellTyped, path])
  const keys = useKeyedMarks(order, value, field.onChange, unit, stamp, tell)
  const { current, typed, unreadable, last, go, press } = keys
  const cells = useFollowedCells(current)
  const settled = useMemo(
    () => (typed === '' ? value : value.filter((one) => one.mark !== current)),
    [value, typed, current],
  )
  const readings = new Map(value.map((one) => [one.mark, one.reading]))
  const taken = last === null ? undefined : readings.get(last)
  const message = messageOf(fieldState.error)
  const hasHeads = shape.columns.some((column) => column !== '')
  return (
    <fieldset
      className="field"
      data-marks={path}
      onBlur={(event) => (event.currentTarget.contains(event.relatedTarget) ? undefined : tell(null))}
    >
      <legend className="label">
        {label} <span className="quiet">({showUnit(unit)})</span>
      </legend>
      <span className="hint">A mark is judged once it is left.</span>
      {units.length > 1 && keyed === undefined ? (
        <label className="field">
          Unit as the gauge shows it
          <select
            aria-label={`Unit of ${label}`}
            value={unit}
            onChange={(event) => setUnit(units.find((one) => one === event.target.value) ?? null)}
          >
            {units.map((one) => (
              <option key={one} value={one}>
                {showUnit(one)}
              </option>
            ))}
          </select>
        </label>
      ) : null}
      <fieldset
        className="keyed-grid"
        aria-label={label}
        style={{ gridTemplateColumns: `${hasHeads ? '34px ' : ''}repeat(${shape.columns.length}, minmax(0, 1fr))` }}
        onKeyDown={(event) => {
          if (event.ctrlKey || event.metaKey || event.altKey || event.key === 'Tab') return
          if (KEYED.test(event.key) || /^(Enter|Backspace|Delete)$/.test(event.key)) {
            event.preventDefault()
            press(event.key)
          } else if (/^Arrow/.test(event.key) && current) {
            const width = shape.columns.length
            const step = { ArrowLeft: -1, ArrowRight: 1, ArrowUp: -width, ArrowDown: width }[event.key] ?? 0
            const next = order[order.indexOf(current) + step]
            if (next) {
              event.preventDefault()
              go(next)
            }
          }
        }}
      >
        {hasHeads ? (
          <>
            <span className="h" />
            {shape.columns.map((column) => (
              <span key={column} className="h">
                {column}
              </span>
            ))}
          </>
        ) : null}
        {shape.marks.map((row, rowPlace) => [
          hasHeads ? (
            <span key={`row-${shape.rows[rowPlace]}`} className="h">
              {shape.rows[rowPlace]}
            </span>
          ) : null,
          ...row.map((mark) => {
            const reading = readings.get(mark)
            const isCurrent = current === mark
            return (
              <MarkCell
                key={mark}
                mark={mark}
                className={cellClass(reading, failing.has(mark), isCurrent && typed !== '')}
                isCurrent={isCurrent}
                label={`${mark}: ${reading ? showReading(reading) : 'no reading yet'}${failing.has(mark) ? ', outside the limit' : ''}`}
                shown={isCurrent && typed !== '' ? typed : reading ? showReading(reading) : hasHeads ? '–' : null}
                cells={cells}
                go={go}
              />
            )
          }),
        ])}
      </fieldset>
      {unreadable !== null ? (
        <p className="wrong" role="alert">
          “{unreadable}” is no reading. Key digits with one point, or a special value.
        </p>
      ) : null}
      {message ? (
        <p className="wrong" role="alert">
          {value.length === 0 ? 'No mark has a reading yet.' : message}
        </p>
      ) : null}
      <MarksTally quantity={quantity} readings={settled} planned={order.length} failing={failing} />
      {current !== null ? (
        <MarksPad
          mark={current}
          typed={typed}
          unit={unit}
          last={last !== null && taken ? { mark: last, reading: taken } : null}
          press={press}
          special={keys.special}
          close={() => go(null)}
        />
      ) : (
        <>
          {last !== null && taken ? <ReadBack what={last} value={showReadingUnit(taken)} /> : null}
          <button
            type="button"
            className="button plain"
            onClick={() => go(order.find((mark) => !readings.has(mark)) ?? order[0] ?? null)}
          >
            Key the marks
          </button>
        </>
      )}
    </fieldset>
  )
}

function cellClass(reading: Reading | undefined, isFailing: boolean, isTyping: boolean): string {
  const kind = !reading ? 'none' : isFailing ? 'low' : reading.kind === 'number' ? '' : 'special'
  return `cell ${kind} ${isTyping ? 'typing' : ''}`
}
