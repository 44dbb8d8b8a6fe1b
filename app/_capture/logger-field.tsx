'use client'
import { useId, useState } from 'react'
import { useFormContext } from 'react-hook-form'
import {
  LOGGER_BYTES_MOST,
  type LoggerAnswers,
  type LoggerSeries,
  parseLoggerSeries,
} from '@/lib/capture/logger-series'
import { type ColumnUse, loggerRemark, withColumns } from '@/lib/capture/logger-takeover'
import { loggerTextOf } from '@/lib/capture/logger-text'
import { useCapture } from './capture-context'
import { LoggerColumns } from './logger-columns'
import { LoggerQuestions } from './logger-questions'

const REFUSED: Record<string, string> = {
  'file-empty': 'The file is empty. Export it from the logger again.',
  'file-too-large': 'The file is larger than 2 MB. Export it with a longer interval, or for the time of the cure only.',
  'not-text': 'This is no text file. Export comma-separated values (CSV) from the logger’s program.',
  'no-times':
    'No line starts with a time followed by values. The first column must be the time, with , ; or a tab between the columns.',
  'too-many-lines':
    'More than 5000 lines. Export it with a longer interval, or for the time of the cure only: a record holds no more.',
  'days-contradict': 'The days of this file are written in two orders. Export it with days as year-month-day.',
}

/** A logger's file taken into the probes of the form: what it leaves open is asked, what cannot be read is named by line, what was keyed stays. */
export function LoggerField({ path }: { path: string }) {
  const id = useId()
  const { utcOffset } = useCapture()
  const { getValues, setValue } = useFormContext()
  const [file, setFile] = useState<{ name: string; text: string } | null>(null)
  const [answers, setAnswers] = useState<LoggerAnswers>({})
  const [uses, setUses] = useState<Record<number, ColumnUse>>({})
  const [said, setSaid] = useState<string | null>(null)
  const parsed = file ? parseLoggerSeries(file.text, answers) : null
  const series: LoggerSeries | null = parsed?.ok ? parsed.value : null
  const choose = async (chosen: File | undefined) => {
    setAnswers({})
    setUses({})
    setSaid(null)
    setFile(null)
    if (!chosen) return
    if (chosen.size > LOGGER_BYTES_MOST) return setSaid(REFUSED['file-too-large'] ?? '')
    setFile({ name: chosen.name, text: loggerTextOf(new Uint8Array(await chosen.arrayBuffer())) })
  }
  const take = () => {
    if (!series || !file) return
    const taken = withColumns({ probes: getValues(path), ambient: getValues('ambient') }, series, uses)
    if (!taken.ok) return setSaid('Temperatures of the ambient are there already: take them away first.')
    setValue(path, taken.value.probes, { shouldDirty: true })
    if (taken.value.ambient) setValue('ambient', taken.value.ambient, { shouldDirty: true })
    setValue('remark', loggerRemark(getValues('remark'), file.name, series, answers), { shouldDirty: true })
    setSaid(`Taken from ${file.name}. Look through the probes below before saving.`)
    setFile(null)
  }
  return (
    <fieldset className="group" data-logger={path}>
      <legend>From a logger’s file</legend>
      <div className="field">
        <label htmlFor={id}>Logger file</label>
        <span className="hint">
          CSV: the time first, then one column for each probe, their names in the line above. Keying below stays
          possible.
        </span>
        <input
          id={id}
          type="file"
          accept=".csv,.txt,.tsv,text/csv,text/plain"
          onChange={(event) => choose(event.target.files?.[0])}
        />
      </div>
      {parsed?.ok === false ? (
        <p className="note refused" role="alert">
          {REFUSED[parsed.error.code]}
        </p>
      ) : null}
      {said ? (
        <p className="note" role="status">
          {said}
        </p>
      ) : null}
      {series ? (
        <>
          <p className="quiet">
            {file?.name}: {series.lineCount} lines, {series.columns.length}{' '}
            {series.columns.length === 1 ? 'column' : 'columns'} after the time.
          </p>
          <LoggerQuestions file={file?.text ?? ''} answers={answers} change={setAnswers} siteOffset={utcOffset} />
          {series.asks.length === 0 ? (
            <>
              <LoggerColumns series={series} uses={uses} change={setUses} />
              {series.badLines.length > 0 ? (
                <details className="note warn" open>
                  <summary>
                    {series.badLines.length} {series.badLines.length === 1 ? 'line needs' : 'lines need'} a look
                  </summary>
                  <ul className="plain-list">
                    {series.badLines.slice(0, 40).map((line) => (
                      <li key={line.lineNo}>
                        <strong>Line {line.lineNo}</strong> <code>{line.text}</code>
                        <br />
                        {line.problem}
                      </li>
                    ))}
                  </ul>
                  {series.badLines.length > 40 ? <p>and {series.badLines.length - 40} more.</p> : null}
                </details>
              ) : null}
              <button
                type="button"
                className="button"
                disabled={!Object.values(uses).some((use) => use !== 'leave out')}
                onClick={take}
              >
                Take the temperatures into the form
              </button>
            </>
          ) : null}
        </>
      ) : null}
    </fieldset>
  )
}
