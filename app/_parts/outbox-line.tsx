'use client'
import { clockAheadOf } from '@/lib/capture/clock-ahead'
import type { OutboxStatus } from '@/lib/capture/outbox/outbox-terms'
import { siteHref } from '@/lib/capture/site/site-address'

/** What is not yet sent, how old the oldest of it is, and what the server refused. Nothing when all is sent and the clock runs right. */
export function OutboxLine({ status, nowMs }: { status: OutboxStatus; nowMs(): number }) {
  const { open, refused, oldestAt, last } = status
  // in a demonstration or test the server's clock is followed: there is nothing to hold against the device
  const clock = clockAheadOf(localStorage) === null ? status.clock : null
  const isFarOff = clock?.isFarOff ?? false
  if (open === 0 && !isFarOff && !clock?.drift) return null
  return (
    <p className={`outbox-line ${refused > 0 ? 'has-refused' : ''}`} role="status">
      {open > 0 ? (
        <a href={siteHref({ show: 'outbox' })}>
          {open} {open === 1 ? 'entry is' : 'entries are'} not yet sent
          {oldestAt === null ? '' : `, oldest ${ageWords(nowMs() - oldestAt)}`}
          {refused > 0 ? `, ${refused} refused` : ''}
        </a>
      ) : null}
      {open > 0 && last && last.kind !== 'sent' && last.kind !== 'busy' ? <span>{STANDS[last.kind]}</span> : null}
      {isFarOff || clock?.drift ? (
        <span>
          The clock of this device is {Math.round(Math.abs(clock?.offsetMs ?? 0) / 1000)} s{' '}
          {(clock?.offsetMs ?? 0) > 0 ? 'ahead' : 'behind'}
          {clock?.drift ? ' and has moved since the contact before' : ''}. The record is told; set it by the network’s
          time.
        </span>
      ) : null}
    </p>
  )
}

const STANDS = {
  'no-network': 'The server cannot be reached.',
  'signed-out': 'You are signed out: sign in to send.',
  'other-person': 'They are sent once their own person signs in.',
  'version-too-old': 'This app is too old: open it anew with a network.',
  'version-too-new': 'This app is newer than the server.',
  'server-trouble': 'The server has trouble.',
  'storage-lost': 'The storage of this device failed.',
} as const

/** An age in words: `3 min`, `2 h 5 min`, `4 days`. */
export function ageWords(ageMs: number): string {
  const minutes = Math.max(0, Math.floor(ageMs / 60_000))
  if (minutes < 1) return 'under a minute'
  if (minutes < 60) return `${minutes} min`
  const hours = Math.floor(minutes / 60)
  return hours < 48 ? `${hours} h ${minutes % 60} min` : `${Math.floor(hours / 24)} days`
}
