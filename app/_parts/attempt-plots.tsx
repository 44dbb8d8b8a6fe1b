import type { AttemptState, RepairState } from '@/lib/domain/fold/repair-state'
import { curePicture } from '@/lib/domain/pictures/cure-picture'
import { type CurePlot, curePlotsOf } from '@/lib/domain/pictures/cure-plot'
import { clockAt } from '@/lib/domain/pictures/plot-frame'
import { pressurePicture } from '@/lib/domain/pictures/pressure-picture'
import { type PressurePlot, pressurePlotsOf } from '@/lib/domain/pictures/pressure-plot'
import { TableFold } from './table-fold'
import { TwoFormats } from './two-formats'

/** The plots of an attempt: cure and pressure over time, each with its sentence and its table. */
export function AttemptPlots({ state, attempt }: { state: RepairState; attempt: AttemptState }) {
  return (
    <>
      {curePlotsOf(attempt).map((plot) => (
        <section key={plot.title} className="sheet">
          <h2>{plot.title}</h2>
          <CureFigure plot={plot} />
        </section>
      ))}
      {pressurePlotsOf(state, attempt).map((plot) => (
        <section key={plot.points[0]?.at ?? plot.kind} className="sheet">
          <h2>Pressure over the test</h2>
          <PressureFigure plot={plot} />
        </section>
      ))}
    </>
  )
}

/** The latest cure and pressure plot of a repair, with the attempt they come from. */
export function RepairPlots({ state }: { state: RepairState }) {
  const attempts = state.points.flatMap((point) =>
    point.attempts.map((attempt) => ({ attempt, isOnly: point.attempts.length === 1 })),
  )
  const cured = attempts.findLast(({ attempt }) => curePlotsOf(attempt).length > 0)
  const tested = attempts.findLast(({ attempt }) => pressurePlotsOf(state, attempt).length > 0)
  return (
    <>
      {(cured ? curePlotsOf(cured.attempt) : []).map((plot) => (
        <section key={plot.title} className="sheet">
          <h2>
            {plot.title}
            {cured?.isOnly ? '' : `, attempt ${cured?.attempt.attempt}`}
          </h2>
          <CureFigure plot={plot} />
        </section>
      ))}
      {(tested ? pressurePlotsOf(state, tested.attempt) : []).map((plot) => (
        <section key={plot.points[0]?.at ?? plot.kind} className="sheet">
          <h2>
            Pressure over the test
            {tested?.isOnly ? '' : `, attempt ${tested?.attempt.attempt}`}
          </h2>
          <PressureFigure plot={plot} />
        </section>
      ))}
    </>
  )
}

function CureFigure({ plot }: { plot: CurePlot }) {
  const times = [...new Set(plot.probes.flatMap((one) => one.stretches.flat().map((each) => each.atMs)))].sort(
    (a, b) => a - b,
  )
  const byProbe = plot.probes.map((one) => ({
    clock: one.clock,
    at: new Map(one.stretches.flat().map((each) => [each.atMs, each.shown])),
  }))
  return (
    <>
      <p className="plot-sentence">{plot.sentence}</p>
      <TwoFormats draw={(format) => curePicture(plot, format)} />
      <TableFold>
        <table>
          <thead>
            <tr>
              <th>time {plot.offset}</th>
              {byProbe.map((one) => (
                <th key={one.clock} className="num">
                  {one.clock} o’clock
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {times.map((atMs) => (
              <tr key={atMs}>
                <th scope="row">{clockAt(atMs, plot.offset, true)}</th>
                {byProbe.map((one) => (
                  <td key={one.clock} className="num">
                    {one.at.get(atMs) ?? '–'}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </TableFold>
    </>
  )
}

function PressureFigure({ plot }: { plot: PressurePlot }) {
  const hasSecond = plot.points.some((one) => one.second)
  return (
    <>
      <p className="plot-sentence">{plot.sentence}</p>
      <TwoFormats draw={(format) => pressurePicture(plot, format)} />
      <TableFold>
        <table>
          <thead>
            <tr>
              <th>time {plot.offset}</th>
              <th className="num">as read</th>
              {hasSecond ? <th className="num">second gauge</th> : null}
              <th className="num">steel</th>
              <th className="num">corrected, MPa</th>
            </tr>
          </thead>
          <tbody>
            {plot.points.map((one) => (
              <tr key={one.at}>
                <th scope="row">{clockAt(one.atMs, plot.offset)}</th>
                <td className="num">{one.shown}</td>
                {hasSecond ? <td className="num">{one.second?.shown ?? '–'}</td> : null}
                <td className="num">{one.steel ?? '–'}</td>
                <td className="num">{one.correctedMpa === null ? 'not computed' : one.correctedMpa.toFixed(4)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFold>
    </>
  )
}
