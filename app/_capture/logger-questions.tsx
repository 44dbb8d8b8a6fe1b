'use client'
import { useId } from 'react'
import { type LoggerAnswers, type LoggerQuestion, parseLoggerSeries } from '@/lib/capture/logger-series'

/** What a logger's file does not say and only a person knows. Nothing is chosen beforehand; what was answered stays open to change. */
export function LoggerQuestions({
  file,
  answers,
  change,
  siteOffset,
}: {
  file: string
  answers: LoggerAnswers
  change: (next: LoggerAnswers) => void
  siteOffset: string
}) {
  const id = useId()
  const open = parseLoggerSeries(file, {})
  const asks: readonly LoggerQuestion[] = open.ok ? open.value.asks : []
  if (asks.length === 0) return null
  const with_ = (part: Partial<LoggerAnswers>) => change({ ...answers, ...part })
  return (
    <fieldset className="field">
      <legend className="label">The file does not say</legend>
      {asks.includes('day') ? (
        <label className="field">
          Day of the first line
          <input type="date" value={answers.day ?? ''} onChange={(event) => with_({ day: event.target.value })} />
        </label>
      ) : null}
      {asks.includes('day-order') ? (
        <Choice
          name={`${id}-order`}
          label="How are its days written?"
          options={[
            ['day first', 'day before month'],
            ['month first', 'month before day'],
          ]}
          value={answers.dayOrder}
          choose={(dayOrder) => with_({ dayOrder })}
        />
      ) : null}
      {asks.includes('offset') ? (
        <Choice
          name={`${id}-offset`}
          label="Which clock did the logger keep?"
          options={[
            [siteOffset, `the site’s, UTC${siteOffset}`],
            ...(siteOffset === '+00:00' ? [] : ([['Z', 'UTC']] as const)),
          ]}
          value={answers.offset}
          choose={(offset) => with_({ offset })}
        />
      ) : null}
      {asks.includes('offset') ? (
        <label className="field">
          or another offset from UTC
          <input
            placeholder="+02:00"
            inputMode="text"
            autoComplete="off"
            onChange={(event) => {
              const text = event.target.value.trim()
              if (/^[+-]\d{2}:\d{2}$/.test(text)) with_({ offset: text })
            }}
          />
        </label>
      ) : null}
      {asks.includes('unit') ? (
        <Choice
          name={`${id}-unit`}
          label="In which unit are its temperatures?"
          options={[
            ['degC', '°C'],
            ['degF', '°F'],
          ]}
          value={answers.unit}
          choose={(unit) => with_({ unit })}
        />
      ) : null}
    </fieldset>
  )
}

function Choice<T extends string>({
  name,
  label,
  options,
  value,
  choose,
}: {
  name: string
  label: string
  options: readonly (readonly [T, string])[]
  value: T | undefined
  choose: (value: T) => void
}) {
  return (
    <fieldset className="field">
      <legend>{label}</legend>
      <div className="choice">
        {options.map(([option, words]) => (
          <label key={option}>
            <input type="radio" name={name} checked={value === option} onChange={() => choose(option)} />
            {words}
          </label>
        ))}
      </div>
    </fieldset>
  )
}
