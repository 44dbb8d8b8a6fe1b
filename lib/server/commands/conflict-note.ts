import { createHash } from 'node:crypto'
import { FactId, type StreamId, streamOf } from '@/lib/domain/facts/fact'
import type { Fact, FactOf } from '@/lib/domain/facts/fact-kinds'
import { CONFLICT_FACTS_AT_MOST } from '@/lib/domain/facts/project-bodies'
import type { Desk } from './desk'

const REMARK_LENGTH = 900

export type Blindness = {
  /** The decision, and whether it is kept in the record in question or was not applied. */
  decision: FactId
  isKept: boolean
  repair: StreamId
  device: Fact['device']
  /** All facts of the repair in the order received, and how many of them the device had seen, its own among them. */
  facts: readonly Fact[]
  seen: number
  point: string | undefined
  words: string
}

/**
 * The note, in the device's stream, that a decision made without a network met facts that it had not seen: always under the same id for one decision, so that it is kept once. Names up to 20 facts, those
 * of the decision's point first; one of the point that was seen goes with them where none else is of it, for the fold finds the conflict's point by its facts.
 */
export function conflictNote(desk: Desk, blind: Blindness): FactOf<'conflict-noted'> {
  const { decision, facts, seen, point, device } = blind
  const ofPoint = (fact: Fact) => 'point' in fact.body && fact.body.point === point
  // what the device made itself it knew, in whatever order it arrived among what others sent
  const ofOthers = facts.filter((fact) => fact.device.id !== device.id)
  const unseen = ofOthers.slice(Math.max(0, ofOthers.length - Math.max(0, facts.length - seen)))
  const seenFacts = facts.filter((fact) => !unseen.includes(fact))
  const known = seenFacts.findLast(ofPoint) ?? seenFacts[0]
  const named = [...unseen.filter(ofPoint), ...unseen.filter((fact) => !ofPoint(fact))].slice(
    0,
    CONFLICT_FACTS_AT_MOST - 1,
  )
  const ids = [...(known && !unseen.some(ofPoint) ? [known] : []), ...named].map((fact) => fact.id)
  return desk.make({
    stream: streamOf('device', device.id),
    kind: 'conflict-noted',
    body: {
      repair: blind.repair,
      facts: ids,
      ...(blind.isKept ? { decision } : {}),
      remark: blind.words.trim().slice(0, REMARK_LENGTH),
    },
    entry: { id: conflictIdOf(decision), device },
    offset: null,
  })
}

/** The id of the note about a decision: always the same one. @source RFC 9562 5.8 (UUID version 8) */
export function conflictIdOf(decision: FactId): FactId {
  const hex = createHash('sha256').update(`conflict ${decision}`).digest('hex')
  return FactId.parse(
    `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20, 32)}`,
  )
}
