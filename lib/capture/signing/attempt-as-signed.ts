import type { OutboxEntry } from '@/lib/capture/outbox/outbox-entry'
import type { SitePack } from '@/lib/domain/capture/site-pack'
import type { Heads } from '@/lib/domain/facts/repair-bodies'
import type { AttemptState } from '@/lib/domain/fold/repair-state'
import { instantOf, type Moment, momentOf } from '@/lib/domain/time'
import { digestOnDevice } from './sign-on-device'

/** Entries that bring their signature, a fact of its own. */
const SIGNED_WITHIN: ReadonlySet<OutboxEntry['command']> = new Set(['release-on-device', 'accept-on-device'])

/** An attempt exactly as it stands on this device, for a signature or a decision: what is covered, what was seen of the repair, and the time. */
export type AttemptAsSigned = {
  covers: { fact: string; sha256: string }[]
  /** SHA-256 of originals of photos that are on this device and not in the record yet. */
  photos: string[]
  heads: Heads
  at: Moment
}

/**
 * What a person who signs or decides on this device has before them. The heads are as long as the repair's stream will be once the entries made here before have arrived. The time is now, but never
 * before something that this device entered already.
 */
export function attemptAsSigned(
  pack: SitePack,
  entries: readonly OutboxEntry[],
  { point, attempt, records, photos }: Pick<AttemptState, 'point' | 'attempt' | 'records' | 'photos'>,
  here: { nowMs: number; device: string },
): AttemptAsSigned {
  const known = new Set<string>(pack.facts.map((fact) => fact.id))
  const own = entries.filter((one) => one.input.stream === pack.stream)
  const toCome = own.filter((one) => one.state !== 'refused' && one.state !== 'set aside' && !known.has(one.id))
  const facts = [
    ...records.flatMap(({ fact, corrections }) => [fact, ...corrections]),
    ...photos.map((one) => one.fact),
  ]
  return {
    covers: facts.map((fact) => ({ fact: fact.id, sha256: pack.digests[fact.id] ?? digestOnDevice(fact) })),
    photos: [...new Set(toCome.flatMap((one) => (isPhotoOf(one, point, attempt) ? one.photos : [])))],
    heads: [
      {
        stream: pack.stream,
        length:
          pack.facts.filter((fact) => fact.stream === pack.stream).length +
          toCome.reduce((sum, one) => sum + (SIGNED_WITHIN.has(one.command) ? 2 : 1), 0),
      },
    ],
    at: momentOf(Math.max(here.nowMs, lastEnteredMs(pack, own, here.device)), pack.utcOffset),
  }
}

/** Whether an entry is a photo of the work at a point and attempt; a scan of paper is none. */
export function isPhotoOf({ command, input: { body } }: OutboxEntry, point: string, attempt: number): boolean {
  if (command !== 'attach-photo' || body === null || typeof body !== 'object') return false
  const said = body as { point?: unknown; attempt?: unknown; scan?: unknown }
  return said.point === point && said.attempt === attempt && said.scan === undefined
}

/** When this device last entered something about the repair, as far as it knows, rounded up to a whole second. */
function lastEnteredMs(pack: SitePack, own: readonly OutboxEntry[], device: string): number {
  const moments = [
    ...own.map((one) => one.input.enteredAt).filter((one) => typeof one === 'string'),
    ...pack.facts
      .filter((fact) => fact.stream === pack.stream && fact.device.id === device)
      .map((fact) => fact.enteredAt),
  ]
  return Math.max(0, ...moments.map((one) => Math.ceil(instantOf(one) / 1000) * 1000))
}
