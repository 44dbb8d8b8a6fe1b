'use client'
import { useId, useState } from 'react'
import { type Control, type FieldValues, useController } from 'react-hook-form'
import { parseReading, showReading } from '@/lib/domain/reading'
import { Grid } from '@/lib/domain/records/common'
import { useCapture } from './capture-context'
import { FieldShell } from './field-shell'

/** The chalk grid: stations in mm from the leak and clock positions. It is a layout, not a reading; later points take it from point 01. */
export function ChalkGridField({
  control,
  path,
  label,
}: {
  control: Control<FieldValues>
  path: string
  label: string
}) {
  const id = useId()
  const { grid } = useCapture()
  const { field, fieldState } = useController({ control, name: path })
  const parsed = Grid.safeParse(field.value)
  const present = parsed.success ? parsed.data : null
  const [stations, setStations] = useState(
    present ? present.stations.map((one) => showReading(one.fromLeak)).join(' ') : '',
  )
  const [clocks, setClocks] = useState(present ? present.clocks.join(' ') : '')
  const lay = (stationText: string, clockText: string) => {
    setStations(stationText)
    setClocks(clockText)
    const read = stationText
      .trim()
      .split(/\s+/)
      .map((text) => parseReading(text, 'mm'))
    const numbers = read.flatMap((one) => (one?.kind === 'number' ? [one] : []))
    const rows = clockText
      .trim()
      .split(/\s+/)
      .filter((text) => text !== '')
    field.onChange(
      numbers.length === read.length && rows.length > 0
        ? {
            stations: numbers.map((fromLeak, place) => ({ name: String.fromCharCode(65 + place), fromLeak })),
            clocks: rows,
          }
        : undefined,
    )
  }
  const take = () => {
    if (grid) {
      field.onChange(grid)
      setStations(grid.stations.map((one) => showReading(one.fromLeak)).join(' '))
      setClocks(grid.clocks.join(' '))
    }
  }
  return (
    <FieldShell id={id} as="fieldset" label={label} error={fieldState.error}>
      {grid ? (
        <button type="button" className="button plain" onClick={take}>
          Take the grid of point 01
        </button>
      ) : null}
      <label className="field">
        Stations, mm from the leak, upstream first
        <input
          value={stations}
          inputMode="text"
          placeholder="-120 -60 0 60 120"
          onChange={(event) => lay(event.target.value, clocks)}
        />
      </label>
      <label className="field">
        Clock positions
        <input
          value={clocks}
          inputMode="text"
          placeholder="12 3 6 9"
          onChange={(event) => lay(stations, event.target.value)}
        />
      </label>
      <span className="hint">
        {present
          ? `${present.stations.length * present.clocks.length} marks: ${present.stations.map((one) => one.name).join(' ')} by ${present.clocks.join(' ')}`
          : 'No grid yet.'}
      </span>
    </FieldShell>
  )
}
