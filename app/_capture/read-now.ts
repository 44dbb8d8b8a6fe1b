import { type Moment, momentOf } from '@/lib/domain/time'

/**
 * The time now as a moment with the site's offset. A real store takes the device's own clock, as it is; a demonstration or test asks the
 * server for its clock and falls back to the device's when there is no answer.
 */
export async function readNow(utcOffset: string, kind: 'real' | 'demo' | 'test'): Promise<Moment> {
  if (kind !== 'real') {
    try {
      const reply = await fetch('/api/clock', { cache: 'no-store', signal: AbortSignal.timeout(3000) })
      const body: unknown = await reply.json()
      if (body !== null && typeof body === 'object' && 'now' in body && typeof body.now === 'string')
        return momentOf(Date.parse(body.now), utcOffset)
    } catch (cause) {
      if (!(cause instanceof DOMException || cause instanceof TypeError || cause instanceof SyntaxError)) throw cause
    }
  }
  return momentOf(Date.now(), utcOffset)
}
