'use client'
import { useEffect, useRef, useState } from 'react'
import { type Control, type FieldValues, useWatch } from 'react-hook-form'
import { type Countdown, countdownOf, shakeBetween, showLeft } from '@/lib/capture/countdown'
import type { FormSpec } from '@/lib/capture/forms/field-spec'
import { limitMinutesOf } from '@/lib/capture/limit-minutes'
import { Measured, showReadingUnit } from '@/lib/domain/reading'
import { instantOf, Moment } from '@/lib/domain/time'
import type { CaptureContext } from './capture-context'
import { useSiteClock } from './use-site-clock'
import { useWakeLock } from './use-wake-lock'

type Props = { spec: FormSpec; control: Control<FieldValues>; context: CaptureContext }

/** A countdown readable at arm's length. It counts from the stamped start by the clock, so that a locked screen costs nothing. */
export function TimerStrip({ spec, control, context }: Props) {
  const values = useWatch({ control }) as FieldValues
  const isWatch = spec.timer === 'watch'
  const start = Moment.safeParse(values[spec.type === 'tape-roll' ? 'soakStart' : 'startedAt'])
  const end = Moment.safeParse(values[spec.type === 'tape-roll' ? 'wrapEnd' : isWatch ? 'endedAt' : 'usedBy'])
  const limit = limitMinutesOf(spec, values, context.judge)
  if (!start.success)
    return (
      <p className="note">
        The clock starts with the stamp of{' '}
        {isWatch ? 'the watch’s start' : spec.type === 'tape-roll' ? 'the soak' : 'mixing'}.
      </p>
    )
  if (limit === null)
    return (
      <p className="note warn">
        No time is computed:{' '}
        {isWatch
          ? 'the specification states no watch'
          : 'the temperature is missing or outside the specification’s table'}
        .
      </p>
    )
  if (end.success) return null
  return (
    <RunningTimer
      startMs={instantOf(start.data)}
      limit={limit}
      title={isWatch ? 'Watch' : 'Working time'}
      basis={isWatch ? null : basisOf({ spec, values, context })}
      over={isWatch ? 'The watch is complete.' : 'The working time is over.'}
      context={context}
    />
  )
}

type Running = {
  startMs: number
  limit: number
  title: string
  basis: string | null
  over: string
  context: CaptureContext
}

function RunningTimer({ startMs, limit, title, basis, over, context }: Running) {
  const nowMs = useSiteClock(context)
  const count = nowMs === null ? null : countdownOf(startMs, limit, nowMs)
  const isRunning = count !== null && count.stage !== 'over'
  const isHeld = useWakeLock(isRunning)
  useShaking(count?.leftSeconds ?? null)
  const [isLarge, setLarge] = useState(false)
  const minutes = limit.toFixed(2).replace(/\.?0+$/, '')
  const heading = `${title}, ${minutes} minutes`
  const remark = remarkOf(count, over, isHeld)
  return (
    <>
      <section className="sheet stack tight" role="timer" aria-label={`${title} left`}>
        <p className="eyebrow">
          {heading}
          {basis ? <span className="quiet"> {basis}</span> : null}
        </p>
        <Figures count={count} />
        <p className="quiet">{remark}</p>
        <button type="button" className="button plain" onClick={() => setLarge(true)}>
          Show large
        </button>
      </section>
      {isLarge ? <LargeTimer count={count} heading={heading} remark={remark} close={() => setLarge(false)} /> : null}
    </>
  )
}

function LargeTimer({
  count,
  heading,
  remark,
  close,
}: {
  count: Countdown | null
  heading: string
  remark: string
  close: () => void
}) {
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => dialog.current?.showModal(), [])
  const isOut = count !== null && count.stage !== 'running'
  return (
    <dialog ref={dialog} className={`timer-large ${isOut ? 'ending' : ''}`} aria-label={heading} onClose={close}>
      <div className="row">
        <p className="eyebrow">{heading}</p>
        <button type="button" className="button plain" onClick={close}>
          Back to the form
        </button>
      </div>
      <Figures count={count} />
      <p className="quiet">{remark}</p>
    </dialog>
  )
}

function Figures({ count }: { count: Countdown | null }) {
  const isOut = count !== null && count.stage !== 'running'
  return (
    <div className="stack tight timer-figures">
      <p className={`countdown ${isOut ? 'ending' : ''}`}>{count === null ? '–' : showLeft(count.leftSeconds)}</p>
      <div className="timer-line" aria-hidden="true">
        <span style={{ width: `${100 - 100 * (count?.usedShare ?? 0)}%` }} />
      </div>
    </div>
  )
}

/** Shakes the device at two minutes, at one and at the end. */
function useShaking(leftSeconds: number | null): void {
  const before = useRef<number | null>(null)
  useEffect(() => {
    if (leftSeconds === null) return
    const shake = shakeBetween(before.current, leftSeconds)
    before.current = leftSeconds
    if (shake) navigator.vibrate?.(shake)
  }, [leftSeconds])
}

function remarkOf(count: Countdown | null, over: string, isHeld: boolean): string {
  if (count?.stage === 'over') return over
  const screen = isHeld
    ? 'The screen stays on and the phone shakes near the end.'
    : 'Keep the screen on: a locked phone does not shake. The count itself runs by the clock.'
  return `${screen} Stopping is always right when something is wrong.`
}

/** The temperature that the working time was read at, and how its table is read. */
function basisOf({ spec, values, context }: Omit<Props, 'control'> & { values: FieldValues }): string | null {
  const temp = Measured.safeParse(values[spec.type === 'tape-roll' ? 'surface' : 'resinTemp'])
  const rule = context.judge.specification.body.criteria
    .filter((one) => one.point === context.judge.point.no)
    .map((one) => one.rule)
    .find((one) => one.kind === 'working-time' && one.of === spec.type)
  if (!temp.success || rule?.kind !== 'working-time') return null
  const read = rule.table.kind === 'step' ? 'by the next warmer row' : 'between the rows'
  return `at ${showReadingUnit(temp.data)}, read ${read} of the data sheet’s table; a larger mix lasts shorter`
}
