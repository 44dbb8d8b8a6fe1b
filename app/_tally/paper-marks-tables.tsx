import type { FieldSpec } from '@/lib/capture/forms/field-spec'
import { type PaperGround, paperMarks } from '@/lib/capture/tally/paper-marks'
import { showUnit } from '@/lib/domain/reading'

const BLANK_COLUMNS = ['1', '2', '3', '4', '5', '6', '7']
const BLANK_ROWS = ['1', '2', '3', '4']

/** The marks of a field as a table of empty boxes in the order of taking: clock positions down, stations across. */
export function PaperMarksTables({
  spec,
  ground,
}: {
  spec: Extract<FieldSpec, { kind: 'marks' }>
  ground: PaperGround
}) {
  const { unit, tables } = paperMarks(spec, ground)
  if (!tables) return <BlankMarks unit={showUnit(unit)} />
  return (
    <>
      {tables.map((table) => {
        const hasHeads = table.columns.some((one) => one.name !== '')
        return (
          <table key={table.rows[0]?.boxes[0]?.mark} className="tally-marks">
            {hasHeads ? (
              <thead>
                <tr>
                  <th>{showUnit(unit)}</th>
                  {table.columns.map(({ name, caption }) => (
                    <th key={name}>
                      {name} <i>{caption}</i>
                    </th>
                  ))}
                </tr>
              </thead>
            ) : null}
            <tbody>
              {table.rows.map((row) => (
                <tr key={row.boxes[0]?.mark}>
                  <th>{hasHeads ? row.name : showUnit(unit)}</th>
                  {row.boxes.map(({ mark, no }) => (
                    <td key={mark}>
                      <small>
                        <b>{no}</b> {mark}
                      </small>
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        )
      })}
    </>
  )
}

/** Where no chalk grid is recorded yet: stations and clock positions are written at the edges. */
function BlankMarks({ unit }: { unit: string }) {
  return (
    <table className="tally-marks">
      <thead>
        <tr>
          <th>clock ↓ station →</th>
          {BLANK_COLUMNS.map((one) => (
            <td key={one} />
          ))}
        </tr>
      </thead>
      <tbody>
        {BLANK_ROWS.map((one) => (
          <tr key={one}>
            <th>
              <i>{unit}</i>
            </th>
            {BLANK_COLUMNS.map((column) => (
              <td key={column} />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
