import type { InvalidatingEvent } from '@/lib/domain/plan'

/** What makes earlier releases fall, in words. */
export function eventWords(event: InvalidatingEvent): string {
  return event === 'prep-lapsed' ? 'preparation lapsed' : event.replaceAll('-', ' ')
}
