'use client'
import { showMoment } from '@/lib/domain/time'
import { useStoreNow } from './use-store-now'

/** Time left until a moment, by the clock of the store from which `nowMs` was taken; told as ended once it is over. */
export function CountDown({ endsAt, nowMs }: { endsAt: string; nowMs: number }) {
  const now = useStoreNow(nowMs)
  const leftMs = Date.parse(endsAt) - now
  if (leftMs <= 0) return <span className="lapsed">ended {showMoment(endsAt)}</span>
  const seconds = Math.floor(leftMs / 1000)
  const pad = (value: number): string => String(value).padStart(2, '0')
  return (
    <span role="timer" aria-live="off">
      {Math.floor(seconds / 3600)} h {pad(Math.floor(seconds / 60) % 60)} min {pad(seconds % 60)} s left, to{' '}
      {endsAt.slice(11, 16)}
    </span>
  )
}
