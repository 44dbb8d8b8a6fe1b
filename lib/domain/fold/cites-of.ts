import { PersonId, StreamId, streamOf } from '../facts/fact'
import type { Fact } from '../facts/fact-kinds'

/** Body fields that always hold a person's id. */
const PERSON_FIELDS: ReadonlySet<string> = new Set([
  'person',
  'mixedBy',
  'checkedBy',
  'supervisedBy',
  'placedBy',
  'watchedBy',
  'brushedBy',
  'countedBy',
  'wrappedBy',
  'measuredBy',
  'inspector',
  'witness',
  'holder',
  'approvedBy',
])

/** Fields that hold a person's id in facts of these kinds only; elsewhere the same name is plain text. */
const PERSON_FIELDS_OF_KIND: Partial<Record<Fact['kind'], readonly string[]>> = {
  waived: ['by'],
  'notice-sent': ['to'],
  accepted: ['owner'],
  'corrective-action': ['owner'],
  'specification-issued': ['second'],
  'plan-issued': ['second'],
}

/**
 * Streams that a fact cites, sorted, each once and without its own: every value of its body that is a stream id, the persons who observed and
 * entered it or are named in it, and its device. Values inside a correction are found as well.
 */
export function citesOf(fact: Fact): StreamId[] {
  const found = new Set<StreamId>()
  const addPerson = (name: unknown) => {
    const person = PersonId.safeParse(name)
    if (person.success) found.add(streamOf('person', person.data))
  }
  addPerson(fact.observedBy)
  addPerson(fact.enteredBy)
  const device = StreamId.safeParse(`device:${fact.device.id}`)
  if (device.success) found.add(device.data)
  const isPersonField = (name: string) =>
    PERSON_FIELDS.has(name) || (PERSON_FIELDS_OF_KIND[fact.kind] ?? []).includes(name)
  const walk = (value: unknown, name: string): void => {
    if (typeof value === 'string') {
      const stream = StreamId.safeParse(value)
      if (stream.success) found.add(stream.data)
      else if (isPersonField(name)) addPerson(value)
    } else if (Array.isArray(value)) {
      for (const one of value) walk(one, name)
    } else if (value !== null && typeof value === 'object') {
      for (const [key, one] of Object.entries(value)) walk(one, key)
    }
  }
  if (fact.kind === 'corrected') {
    for (const change of fact.body.changes) {
      const field = String(change.path.findLast((part) => typeof part === 'string') ?? '')
      walk(change.from, field)
      walk(change.to, field)
    }
  } else {
    walk(fact.body, '')
  }
  found.delete(fact.stream)
  return [...found].sort()
}
