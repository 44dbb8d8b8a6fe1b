import type { FieldSpec } from '@/lib/capture/forms/field-spec'
import type { PaperGround } from '@/lib/capture/tally/paper-marks'
import { showUnit } from '@/lib/domain/reading'
import { PaperGrid } from './paper-grid'
import { type DrawFields, PaperList } from './paper-list'
import { PaperMarksTables } from './paper-marks-tables'
import { PaperVariant } from './paper-variant'
import { DateBoxes, TickBoxes, TimeBoxes, UnitBox, WriteBox } from './write-box'

const SCALES: Readonly<Record<string, string>> = { ShoreD: showUnit('ShoreD'), ShoreA: showUnit('ShoreA') }

/** Columns of twelve that a field takes on the sheet. */
function spanOf(field: FieldSpec): number {
  switch (field.kind) {
    case 'measured':
    case 'reading':
    case 'yes-no':
    case 'clock':
    case 'whole':
      return 4
    case 'choice':
      return field.options.join('').length + field.options.length * 8 > 60 ? 12 : 8
    case 'text':
    case 'batch':
    case 'instrument':
    case 'person':
    case 'moment':
    case 'day':
      return 6
    default:
      return 12
  }
}

/** Fields of a form one after the other, as boxes to write in. */
export function PaperFields({ fields, ground }: { fields: readonly FieldSpec[]; ground: PaperGround }) {
  return (
    <div className="tally-fields">
      {fields.map((field) => (
        <div
          key={`${field.name}${field.label}`}
          className="tally-field"
          style={{ gridColumn: `span ${spanOf(field)}` }}
        >
          <p className="tally-label">
            {field.label}
            {field.optional ? <i> if any</i> : null}
            {field.hint ? <i> {field.hint}</i> : null}
          </p>
          <PaperInput field={field} ground={ground} />
        </div>
      ))}
    </div>
  )
}

/** The boxes of one field. Nothing is filled in beforehand. */
export function PaperInput({ field, ground, isNarrow }: { field: FieldSpec; ground: PaperGround; isNarrow?: boolean }) {
  switch (field.kind) {
    case 'measured':
    case 'reading':
      return (
        <span className="tally-input">
          <WriteBox />
          <UnitBox units={field.units.map(showUnit)} />
        </span>
      )
    case 'measured-list':
      return (
        <span className="tally-input wide">
          {['1', '2', '3', '4'].map((no) => (
            <WriteBox key={no} no={no} />
          ))}
          <UnitBox units={field.units.map(showUnit)} />
        </span>
      )
    case 'yes-no':
      return <TickBoxes options={['yes', 'no']} />
    case 'choice':
      return isNarrow && field.options.length > 3 ? (
        <span className="tally-input">
          <WriteBox />
        </span>
      ) : (
        <TickBoxes options={field.options.map((option) => SCALES[option] ?? option)} />
      )
    case 'moment':
      return (
        <span className="tally-input">
          {isNarrow ? null : <DateBoxes isDayOnly />}
          <TimeBoxes isNarrow={isNarrow ?? false} />
        </span>
      )
    case 'day':
      return (
        <span className="tally-input">
          <DateBoxes />
        </span>
      )
    case 'marks':
      return <PaperMarksTables spec={field} ground={ground} />
    case 'chalk-grid':
      return <PaperGrid grid={ground.grid} />
    case 'list':
      return <PaperList field={field} draw={drawing(ground)} />
    case 'text-list':
      return (
        <span className="tally-lines">
          {['1', '2', '3'].map((no) => (
            <WriteBox key={no} no={no} />
          ))}
        </span>
      )
    case 'group':
      return <PaperFields fields={field.of} ground={ground} />
    case 'variant':
      return <PaperVariant field={field} draw={drawing(ground)} />
    case 'remark':
      return (
        <span className="tally-lines">
          <WriteBox />
          <WriteBox />
        </span>
      )
    default:
      return (
        <span className="tally-input">
          <WriteBox />
        </span>
      )
  }
}

function drawing(ground: PaperGround): DrawFields {
  return {
    all: (fields) => <PaperFields fields={fields} ground={ground} />,
    one: (field) => <PaperInput field={field} ground={ground} isNarrow />,
  }
}
