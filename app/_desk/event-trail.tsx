import { showMoment } from '@/lib/domain/time'
import type { EventLine } from '@/lib/server/views/trace-event-line'

/** What was done, when and by whom, in the order it happened. Late entries say so. */
export function EventTrail({ events, label }: { events: readonly EventLine[]; label: string }) {
  return (
    <ol className="trail" aria-label={label}>
      {events.map((event) => (
        <li key={event.fact} id={event.fact}>
          <span className="trail-when nowrap">{showMoment(event.at)}</span>
          <span>
            <strong>{event.title}</strong>
            {event.detail ? (
              <>
                {' '}
                <span>{event.detail}</span>
              </>
            ) : null}
            <br />
            <span className="quiet small">
              {event.by}
              {event.late ? ` · late entry, ${event.late}` : ''}
            </span>
          </span>
        </li>
      ))}
    </ol>
  )
}
