import { showSigned } from '@/lib/domain/decimal'
import { streamName } from '@/lib/domain/facts/fact'
import { squaresPath } from '@/lib/domain/labels/squares-path'
import type { TallyView } from '@/lib/server/views/tally-view'
import { DateBoxes, TickBoxes, TimeBoxes, WriteBox } from './write-box'

/** Which repair, point, attempt and revisions a sheet is for, its number and code, and who wrote it when. */
export function SheetHead({ view }: { view: TallyView }) {
  const { point, capture, code } = view
  const { state } = point
  const { body } = state.opened
  return (
    <>
      <div className="tally-head">
        <div>
          <h1>
            {state.number} · point {point.point.no} {point.point.plan.title}
          </h1>
          <p>
            {body.line} {body.lineTitle} · datum {body.datum}, station {showSigned(body.stationFromDatum)} mm from it ·
            leak at {body.clock} o’clock, seen {body.clockView}
            {body.flow ? `, flow ${body.flow}` : ''}
          </p>
          <p>
            <b>Attempt {point.attempt.attempt}</b> · plan {state.plan ? streamName(state.plan.stream) : '–'} rev{' '}
            {state.plan?.revision ?? '–'} · specification {streamName(capture.judge.specification.stream)} rev{' '}
            {capture.judge.specification.revision} · printed {view.printed}
          </p>
          <p className="tally-original">
            This sheet remains the original: keep it. Keeper and place are recorded with the copy, and a second person
            checks the copy against it.
          </p>
        </div>
        <figure>
          <svg
            role="img"
            aria-label={`Code of the address to transcribe this sheet: ${view.address}`}
            viewBox={`-4 -4 ${code.length + 8} ${code.length + 8}`}
            shapeRendering="crispEdges"
          >
            <rect x={-4} y={-4} width={code.length + 8} height={code.length + 8} fill="#fff" />
            <path
              d={squaresPath({ width: code.length, height: code.length }, (x, y) => code[y]?.[x] === true)}
              fill="#000"
            />
          </svg>
          <figcaption>To transcribe it, where a device is allowed</figcaption>
        </figure>
      </div>
      <div className="tally-who">
        <div className="tally-field">
          <p className="tally-label">Observed by, in capitals</p>
          <WriteBox />
        </div>
        <div className="tally-field">
          <p className="tally-label">Observed on</p>
          <span className="tally-input">
            <DateBoxes />
          </span>
        </div>
        <div className="tally-field">
          <p className="tally-label">
            At <i>24 h; seconds where they count</i>
          </p>
          <span className="tally-input">
            <TimeBoxes />
          </span>
        </div>
        <div className="tally-field">
          <p className="tally-label">UTC offset of that clock</p>
          <span className="tally-input">
            <TickBoxes options={[point.utcOffset]} />
            <WriteBox no="other" />
          </span>
        </div>
      </div>
      <p className="tally-printed">
        Where no number can be read write TW through-wall, NA no access, or – not inspected, and say why at the end;
        beyond the gauge’s range write &lt; or &gt; before its limit. Never write over a value: strike it through once,
        write the new one beside it with initials. A repeated measurement is a new sheet.
      </p>
    </>
  )
}
