import { v7 as makeId } from 'uuid'
import { FactId } from '@/lib/domain/facts/fact'
import type { Fact, FactOf } from '@/lib/domain/facts/fact-kinds'
import { done, type Result, refused } from '@/lib/domain/result'
import { dayOf, instantOf, momentOf } from '@/lib/domain/time'
import type { Actor } from '@/lib/server/auth/actor'
import { loadRuntime } from '@/lib/server/runtime/runtime'
import { appendFacts } from '@/lib/server/store/append-facts'
import type { AppendRefusal } from '@/lib/server/store/append-refusal'
import { headsOf } from '@/lib/server/store/heads'
import { loadRepairState } from '@/lib/server/store/load-repair-state'
import { loadStream } from '@/lib/server/store/load-stream'
import type { Desk, Kept } from './desk'
import type { Refusal } from './refusal'

const SERVER_DEVICE = { id: 'server', clockOffsetMs: 0 } as const

/** Open the desk of an actor over the process's store. Every look-up is bound to the actor's tenant. */
export async function openDesk(actor: Actor): Promise<Desk> {
  const { store } = await loadRuntime()
  const now = (offset: string | null) => (offset === null ? store.now() : momentOf(instantOf(store.now()), offset))
  const desk: Desk = {
    actor,
    store,
    now,
    today: (offset) => dayOf(now(offset)),
    async streamOf(stream) {
      const loaded = await loadStream(store, actor.tenant, stream)
      return loaded.facts.length > 0 ? loaded : null
    },
    factsOf: async (stream) => (await desk.streamOf(stream))?.facts ?? null,
    headsOf: (streams) => headsOf(store, actor.tenant, streams),
    stateOf: (repair) => loadRepairState(store, actor.tenant, repair),
    make({ stream, kind, body, entry, by, observedBy, offset }) {
      const enteredAt = entry?.enteredAt ?? now(offset)
      const person = by ?? actor.person
      return {
        v: 1,
        id: entry?.id ?? FactId.parse(makeId()),
        stream,
        kind,
        observedAt: entry?.observedAt ?? enteredAt,
        observedBy: observedBy ?? person,
        enteredAt,
        enteredBy: person,
        ...(entry?.late ? { late: entry.late } : {}),
        device: entry?.device ?? SERVER_DEVICE,
        body,
      } as unknown as FactOf<typeof kind>
    },
    async append(facts, heads) {
      const appended = await appendFacts(store, actor.tenant, facts, {
        receivedBy: actor.person,
        expectHeads: [...heads],
      })
      return appended.ok ? done(keptOf(facts, appended.value)) : refusalOf(appended.error)
    },
  }
  return desk
}

function keptOf(facts: readonly Fact[], appended: readonly { receipt: { position: number } }[]): Kept {
  const first = facts[0]
  if (!first) throw new Error('A command appended nothing')
  const positions = facts.flatMap((fact, index) =>
    fact.stream === first.stream ? [appended[index]?.receipt.position ?? 0] : [],
  )
  return { stream: first.stream, length: Math.max(...positions), fact: first.id, facts: facts.map((fact) => fact.id) }
}

function refusalOf(error: AppendRefusal): Result<never, Refusal> {
  switch (error.code) {
    case 'heads-moved':
      return refused({
        code: 'heads-moved',
        moved: error.streams.map(({ stream, expected, found }) => ({ stream, seen: expected, now: found })),
      })
    case 'id-taken':
      return refused({ code: 'id-taken' })
    case 'tenant-unknown':
      return refused({ code: 'not-found' })
    case 'fact-refused':
      return refused({ code: 'invalid', fields: fieldsOf(error) })
  }
}

function fieldsOf(error: Extract<AppendRefusal, { code: 'fact-refused' }>): Record<string, string[]> {
  const fields: Record<string, string[]> = {}
  for (const { faults } of error.refusals) {
    for (const fault of faults) {
      const at = fault.code === 'fact-malformed' ? fault.at : 'kind'
      fields[at] = [...(fields[at] ?? []), fault.code === 'fact-malformed' ? fault.problem : `no kind ${fault.kind}`]
    }
  }
  return fields
}
