import { PersonId, type StreamId, streamName } from '../facts/fact'
import type { Fact } from '../facts/fact-kinds'
import type { Moment } from '../time'
import { ofKind, ofStream, orderFacts } from './order-facts'
import type { PersonState } from './store-states'

/** A person as the stream tells at `asOf`: the latest name, every qualification ever recorded; or null when never registered. */
export function foldPerson(facts: readonly Fact[], stream: StreamId, asOf: Moment): PersonState | null {
  const own = ofStream(orderFacts(facts, asOf), stream)
  const registered = ofKind(own, 'person-registered')[0]
  if (!registered) return null
  const renamed = ofKind(own, 'person-renamed').at(-1)
  return {
    stream,
    id: PersonId.parse(streamName(stream)),
    name: renamed?.body.name ?? registered.body.name,
    title: registered.body.title,
    party: registered.body.party,
    qualifications: ofKind(own, 'qualification-recorded'),
  }
}
