/** A box for a gloved pen, 9 mm high or more; `no` is printed small in its corner. */
export function WriteBox({ no, width }: { no?: string | number; width?: string }) {
  return (
    <span className="tally-box" style={width ? { flex: 'none', width } : undefined}>
      {no === undefined ? null : <small>{no}</small>}
    </span>
  )
}

/** The unit beside a box: printed where there is one, to be written where the gauge decides. */
export function UnitBox({ units }: { units: readonly string[] }) {
  if (units.length === 1) return <span className="tally-unit">{units[0]}</span>
  return (
    <span className="tally-box unit">
      <small>{units.length > 3 ? 'unit' : units.join(' or ')}</small>
    </span>
  )
}

/** Boxes to tick. */
export function TickBoxes({ options }: { options: readonly string[] }) {
  return (
    <span className="tally-ticks">
      {options.map((option) => (
        <span key={option} className="tally-tick">
          <span className="tally-box tick" />
          {option}
        </span>
      ))}
    </span>
  )
}

/** Boxes of a day; the day of the month alone where the date stands at the head of the sheet. */
export function DateBoxes({ isDayOnly = false }: { isDayOnly?: boolean }) {
  return isDayOnly ? (
    <WriteBox no="day" width="13mm" />
  ) : (
    <>
      <WriteBox no="year" width="22mm" />
      <span className="tally-between">–</span>
      <WriteBox no="month" width="15mm" />
      <span className="tally-between">–</span>
      <WriteBox no="day" width="15mm" />
    </>
  )
}

/** Boxes of a clock time. */
export function TimeBoxes({ isNarrow = false }: { isNarrow?: boolean }) {
  const width = isNarrow ? '10mm' : '13mm'
  return (
    <>
      <WriteBox no="h" width={width} />
      <span className="tally-between">:</span>
      <WriteBox no="min" width={width} />
      <span className="tally-between">:</span>
      <WriteBox no="s" width={isNarrow ? '10mm' : '11mm'} />
    </>
  )
}
