import { PersonId, StreamId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { instantOf, type Moment } from '@/lib/domain/time'
import { isWithin, type Period, tracePerson } from '@/lib/domain/trace/trace-instrument'
import { loadStream } from '@/lib/server/store/load-stream'
import type { Store, TenantId } from '@/lib/server/store/store'
import { listCiting } from './trace-citing'
import { loadTraceGround } from './trace-ground'
import { type TraceUseLine, traceUseLine } from './trace-use-line'

export type PersonUseLine = TraceUseLine & { qualifications: string[] }
/** An act of a person: what they observed, entered or signed, in any stream. */
export type PersonActLine = { fact: string; at: Moment; where: string; what: string; as: string }
export type TracePersonView = {
  person: StreamId
  id: PersonId
  name: string
  title: string
  party: string
  asOf: Moment
  period: Period
  uses: PersonUseLine[]
  acts: PersonActLine[]
}

/** Everything a person did in a period: work with the qualification of that day, and every entry, signature and decision. Plain data. Null when never registered. */
export async function tracePersonView(
  store: Store,
  tenant: TenantId,
  name: string,
  period: Period,
): Promise<TracePersonView | null> {
  const stream = StreamId.safeParse(`person:${name}`)
  if (!stream.success) return null
  const { facts } = await loadStream(store, tenant, stream.data)
  if (facts.length === 0) return null
  const ground = await loadTraceGround(store, tenant, stream.data)
  const trace = tracePerson(facts, stream.data, ground.uses, ground.repairs, period, ground.asOf)
  if (!trace) return null
  const { person } = trace
  const acts = (await listCiting(store, tenant, stream.data)).filter(
    (fact) => (fact.observedBy === person.id || fact.enteredBy === person.id) && isWithin(fact.observedAt, period),
  )
  return {
    person: stream.data,
    id: PersonId.parse(name),
    name: person.name,
    title: person.title,
    party: person.party,
    asOf: ground.asOf,
    period,
    uses: trace.rows.map((row) => ({
      ...traceUseLine(row, ground.states),
      qualifications: row.qualifications.map((one) => `${one.body.number} ${one.body.task} to ${one.body.validTo}`),
    })),
    acts: acts
      .sort((a, b) => instantOf(a.observedAt) - instantOf(b.observedAt))
      .map((fact) => ({
        fact: fact.id,
        at: fact.observedAt,
        where: whereOf(fact),
        what: whatOf(fact),
        as:
          fact.observedBy === person.id
            ? fact.enteredBy === person.id
              ? 'observed and entered'
              : 'observed'
            : 'entered',
      })),
  }
}

function whereOf(fact: Fact): string {
  const point = 'point' in fact.body && fact.body.point ? `, point ${fact.body.point}` : ''
  const attempt = 'attempt' in fact.body && fact.body.attempt ? ` attempt ${fact.body.attempt}` : ''
  return `${fact.stream.replace(':', ' ')}${point}${attempt}`
}

function whatOf(fact: Fact): string {
  switch (fact.kind) {
    case 'recorded':
      return `recorded ${fact.body.record.type.replaceAll('-', ' ')}`
    case 'signed':
      return `signed: ${fact.body.meaning}`
    case 'released':
      return `released for ${fact.body.party}`
    case 'corrected':
      return `corrected: ${fact.body.reason}`
    case 'photo-attached':
      return `photo: ${fact.body.caption}`
    default:
      return fact.kind.replaceAll('-', ' ')
  }
}
