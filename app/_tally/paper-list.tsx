import type { ReactNode } from 'react'
import type { FieldSpec } from '@/lib/capture/forms/field-spec'
import { showUnit } from '@/lib/domain/reading'

type ListField = Extract<FieldSpec, { kind: 'list' }>
/** Draws fields within fields: their boxes, or one of them in a cell. */
export type DrawFields = { all: (fields: readonly FieldSpec[]) => ReactNode; one: (field: FieldSpec) => ReactNode }

/** Up to this many single values stand side by side in a row of a table; longer ones are blocks. */
const COLUMNS_AT_MOST = 5
const ROWS = ['1', '2', '3', '4']
/** Readings over time: a test or a logger read by hand. */
const TIMED_ROWS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '10']
const BLOCKS = ['1', '2']

/** Entries of a list: a table with a row for each, or blocks where one entry has many values. */
export function PaperList({ field, draw }: { field: ListField; draw: DrawFields }) {
  const isTable = field.of.length <= COLUMNS_AT_MOST && field.of.every((one) => one.kind !== 'list')
  if (!isTable)
    return (
      <>
        {BLOCKS.map((no) => (
          <div key={no} className="tally-block">
            <p className="tally-label">
              {field.each} {no}
            </p>
            {draw.all(field.of)}
          </div>
        ))}
      </>
    )
  const isTimed = field.of.some((one) => one.kind === 'moment')
  const rows = isTimed ? TIMED_ROWS : field.of.length === 1 ? ROWS.slice(0, 2) : ROWS
  return (
    <table className="tally-list">
      <thead>
        <tr>
          <th />
          {field.of.map((one) => (
            <th key={one.name}>
              {one.label} {'units' in one ? <i>{one.units.map(showUnit).join(' or ')}</i> : null}
              {one.optional ? <i> if any</i> : null}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((no) => (
          <tr key={no}>
            <th>{no}</th>
            {field.of.map((one) => (
              <td key={one.name}>{HAS_PARTS.has(one.kind) ? draw.one(one) : null}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** Kinds whose cell needs boxes of its own; any other is written into the cell. */
const HAS_PARTS: ReadonlySet<FieldSpec['kind']> = new Set(['yes-no', 'moment'])
