import { FORMS } from '@/lib/capture/forms/form-table'
import type { OutboxEntry } from '@/lib/capture/outbox/outbox-entry'
import { isPhotoOf } from '@/lib/capture/signing/attempt-as-signed'
import type { SitePack } from '@/lib/domain/capture/site-pack'
import type { AttemptState } from '@/lib/domain/fold/repair-state'
import { type Moment, showMoment } from '@/lib/domain/time'

/** What a signature made here covers: every entry, correction and photo of the attempt with its time. */
export function AsSignedList({
  pack,
  entries,
  attempt,
}: {
  pack: SitePack
  entries: readonly OutboxEntry[]
  attempt: AttemptState
}) {
  const lines = linesOf(pack, entries, attempt)
  if (lines.length === 0) return <p className="quiet">Nothing is recorded yet: there is nothing to sign.</p>
  return (
    <details>
      <summary className="fold-head">
        Covers {lines.length} {lines.length === 1 ? 'entry or photo' : 'entries and photos'}, exactly as they stand on
        this device now
      </summary>
      <ul className="plain-list">
        {lines.map(({ id, what, at }) => (
          <li key={id}>
            {what} <span className="quiet small nowrap">{showMoment(at)}</span>
          </li>
        ))}
      </ul>
    </details>
  )
}

function linesOf(
  pack: SitePack,
  entries: readonly OutboxEntry[],
  { point, attempt, records, photos }: AttemptState,
): { id: string; what: string; at: Moment }[] {
  const known = new Set<string>(pack.facts.map((fact) => fact.id))
  const toCome = entries.filter(
    (one) =>
      one.input.stream === pack.stream &&
      isPhotoOf(one, point, attempt) &&
      one.state !== 'refused' &&
      one.state !== 'set aside' &&
      !known.has(one.id),
  )
  return [
    ...records.flatMap(({ fact, record, corrections }) => [
      { id: fact.id, what: FORMS[record.type].title, at: fact.observedAt },
      ...corrections.map((one) => ({ id: one.id, what: `Correction: ${one.body.reason}`, at: one.observedAt })),
    ]),
    ...photos.map(({ fact }) => ({ id: fact.id, what: `Photo: ${fact.body.caption}`, at: fact.observedAt })),
    ...toCome.map(({ id, input: { body, observedAt } }) => ({
      id,
      what: `Photo: ${(body as { caption?: string }).caption ?? ''}, not yet sent`,
      at: String(observedAt),
    })),
  ]
}
