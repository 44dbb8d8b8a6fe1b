import type { ReactNode } from 'react'
import { DRAWN_AT_MOST, type SampleFault, type SampleParams } from '@/lib/server/views/audit-sample-params'

/** What to draw, by which seed, of which readings. Asked by address: the address is the draw. */
export function SampleForm({
  params,
  proposedSeed,
  sizeNow,
  repairs,
  faults,
  isDrawn,
}: {
  params: SampleParams
  proposedSeed: string
  sizeNow: number
  repairs: readonly string[]
  faults: readonly SampleFault[]
  isDrawn: boolean
}) {
  const field = (name: keyof SampleParams, label: string, control: ReactNode, hint?: string) => {
    const wrong = faults.find((one) => one.field === name)
    return (
      <div className="field">
        <label htmlFor={name}>{label}</label>
        {hint ? <span className="hint">{hint}</span> : null}
        {control}
        {wrong ? <span className="wrong">{wrong.text}</span> : null}
      </div>
    )
  }
  const form = (
    <form className="sheet fields no-print" method="get">
      {field(
        'seed',
        'Seed',
        <input
          id="seed"
          name="seed"
          defaultValue={params.seed ?? proposedSeed}
          autoComplete="off"
          maxLength={100}
          required
        />,
        'Proposed by chance. Type dice or words of your own where nobody shall steer the draw.',
      )}
      {field(
        'n',
        'How many readings',
        <input id="n" name="n" inputMode="numeric" defaultValue={params.n ?? '10'} />,
        `1 to ${DRAWN_AT_MOST}`,
      )}
      {field(
        'repair',
        'Repair',
        <>
          <input id="repair" name="repair" list="repair-names" defaultValue={params.repair} autoComplete="off" />
          <datalist id="repair-names">
            {repairs.map((one) => (
              <option key={one} value={one} />
            ))}
          </datalist>
        </>,
        'Empty: all',
      )}
      {field(
        'point',
        'Point',
        <input id="point" name="point" defaultValue={params.point} autoComplete="off" maxLength={4} />,
        'Such as 16. Empty: all',
      )}
      {field('from', 'Observed from', <input id="from" name="from" type="date" defaultValue={params.from} />)}
      {field('to', 'Observed to', <input id="to" name="to" type="date" defaultValue={params.to} />)}
      {field(
        'series',
        'Series of loggers',
        <select id="series" name="series" defaultValue={params.series === 'with' ? 'with' : 'without'}>
          <option value="without">left out</option>
          <option value="with">each value is a reading</option>
        </select>,
      )}
      {field(
        'size',
        'Among the first facts of the log',
        <input id="size" name="size" inputMode="numeric" defaultValue={params.size} placeholder={String(sizeNow)} />,
        'To repeat an earlier draw, the number printed on it. Empty: all',
      )}
      <div className="row search-act">
        <button className="button" type="submit">
          Draw
        </button>
      </div>
    </form>
  )
  if (!isDrawn) return form
  return (
    <details className="sheet no-print">
      <summary className="fold-head">Draw again</summary>
      {form}
    </details>
  )
}
