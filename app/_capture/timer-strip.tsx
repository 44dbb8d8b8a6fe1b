'use client'
import { useEffect, useRef, useState } from 'react'
import type { FormSpec } from '@/lib/capture/forms/field-spec'
import { limitMinutesOf } from '@/lib/capture/limit-minutes'
import { instantOf, Moment } from '@/lib/domain/time'
import type { CaptureContext } from './capture-context'
import { readNow } from './read-now'

/** A countdown readable at arm's length. It counts from the stamped start by the clock, so that a locked screen costs nothing. */
export function TimerStrip({
  spec,
  values,
  context,
}: {
  spec: FormSpec
  values: Record<string, unknown>
  context: CaptureContext
}) {
  const start = Moment.safeParse(values[spec.type === 'tape-roll' ? 'soakStart' : 'startedAt'])
  const end = Moment.safeParse(
    values[spec.type === 'tape-roll' ? 'wrapEnd' : spec.timer === 'watch' ? 'endedAt' : 'usedBy'],
  )
  const limit = limitMinutesOf(spec, values, context.judge)
  const offset = useRef(0)
  const [nowMs, setNowMs] = useState<number | null>(null)
  useEffect(() => {
    let isGone = false
    void readNow(context.utcOffset, context.clockKind).then((now) => {
      if (!isGone) offset.current = context.clockKind === 'real' ? 0 : instantOf(now) - Date.now()
    })
    const tick = setInterval(() => setNowMs(Date.now() + offset.current), 500)
    return () => {
      isGone = true
      clearInterval(tick)
    }
  }, [context])
  const endsMs = start.success && limit !== null ? instantOf(start.data) + limit * 60_000 : null
  const leftSeconds = endsMs === null || nowMs === null ? null : Math.ceil((endsMs - nowMs) / 1000)
  const isEnding = spec.timer === 'working-time' && leftSeconds !== null && leftSeconds <= 120
  const buzzed = useRef(false)
  useEffect(() => {
    if (isEnding && !end.success && !buzzed.current) {
      buzzed.current = true
      navigator.vibrate?.([300, 120, 300, 120, 300])
    }
  }, [isEnding, end.success])
  if (!start.success)
    return (
      <p className="note">
        The clock starts with the stamp of{' '}
        {spec.timer === 'watch' ? 'the watch’s start' : spec.type === 'tape-roll' ? 'the soak' : 'mixing'}.
      </p>
    )
  if (limit === null)
    return (
      <p className="note warn">
        No time is computed:{' '}
        {spec.timer === 'watch'
          ? 'the specification states no watch'
          : 'the temperature is missing or outside the specification’s table'}
        .
      </p>
    )
  if (end.success) return null
  return (
    <div className="sheet" role="timer" aria-label={spec.timer === 'watch' ? 'Watch time left' : 'Working time left'}>
      <p className="eyebrow">
        {spec.timer === 'watch'
          ? `Watch, ${limit} minutes`
          : `Working time, ${limit.toFixed(2).replace(/\.?0+$/, '')} minutes`}
      </p>
      <p className={`countdown ${isEnding ? 'ending' : ''}`}>{leftSeconds === null ? '–' : showLeft(leftSeconds)}</p>
      <p className="quiet">
        {leftSeconds !== null && leftSeconds <= 0
          ? spec.timer === 'watch'
            ? 'The watch is complete.'
            : 'The working time is over.'
          : 'Stopping is always right when something is wrong. The clock does not hurry anyone past a hazard.'}
      </p>
    </div>
  )
}

function showLeft(seconds: number): string {
  const sign = seconds < 0 ? '−' : ''
  const whole = Math.abs(seconds)
  return `${sign}${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`
}
