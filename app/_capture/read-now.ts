import { clockAheadOf, keepClockAhead } from '@/lib/capture/clock-ahead'
import { type Moment, momentOf } from '@/lib/domain/time'

/**
 * The time now as a moment with the site's offset. A real store takes the device's own clock, as it is; a demonstration or test asks the
 * server for its clock, goes on by what it last told when there is no answer, and falls back to the device's when it never told.
 */
export async function readNow(utcOffset: string, kind: 'real' | 'demo' | 'test'): Promise<Moment> {
  if (kind === 'real') return momentOf(Date.now(), utcOffset)
  try {
    const reply = await fetch('/api/clock', { cache: 'no-store', signal: AbortSignal.timeout(3000) })
    const body: unknown = await reply.json()
    if (body !== null && typeof body === 'object' && 'now' in body && typeof body.now === 'string') {
      keepClockAhead(localStorage, Date.parse(body.now) - Date.now())
      return momentOf(Date.parse(body.now), utcOffset)
    }
  } catch (cause) {
    if (!(cause instanceof DOMException || cause instanceof TypeError || cause instanceof SyntaxError)) throw cause
  }
  return momentOf(Date.now() + (clockAheadOf(localStorage) ?? 0), utcOffset)
}
