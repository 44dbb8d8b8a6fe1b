import { StreamId, streamKind } from '@/lib/domain/facts/fact'
import { foldBatch } from '@/lib/domain/fold/fold-batch'
import { foldInstrument } from '@/lib/domain/fold/fold-instrument'
import { foldPerson } from '@/lib/domain/fold/fold-person'
import { dayOf, type Moment } from '@/lib/domain/time'
import { isRealUse, rowsOf } from '@/lib/domain/trace/trace-batch'
import { certificateOn } from '@/lib/domain/trace/trace-instrument'
import { loadRepairState } from '@/lib/server/store/load-repair-state'
import { loadStreams } from '@/lib/server/store/load-stream'
import type { Store, TenantId } from '@/lib/server/store/store'
import { identityOf } from './trace-ground'
import { type TraceUseLine, traceUseLine } from './trace-use-line'

/** One batch, instrument or person behind a repair, with what stood behind it then. */
export type TracedSource = {
  of: StreamId
  kind: 'batch' | 'instrument' | 'person'
  name: string
  what: string
  papers: string[]
  uses: TraceUseLine[]
}
export type TraceRepairView = {
  repair: StreamId
  number: string
  line: string
  status: string
  project: StreamId
  asOf: Moment
  sources: TracedSource[]
}

/** A repair followed back: each batch with its certificate, each instrument with the certificate valid on the day of use, each person with the qualification of that day. Plain data. */
export async function traceRepairView(store: Store, tenant: TenantId, number: string): Promise<TraceRepairView | null> {
  const stream = StreamId.safeParse(`repair:${number}`)
  const state = stream.success ? await loadRepairState(store, tenant, stream.data) : null
  if (!state) return null
  const sources = [...new Set(state.uses.map((use) => use.of))].sort()
  const { facts } = await loadStreams(store, tenant, sources)
  const states = new Map([[state.stream, state]])
  const identity = identityOf(state)
  return {
    repair: state.stream,
    number: state.number,
    line: identity.line,
    status: state.status,
    project: state.opened.body.project,
    asOf: state.asOf,
    sources: sources.flatMap((of): TracedSource[] => {
      const uses = rowsOf(of, state.uses, [identity], state.asOf).map((row) => traceUseLine(row, states))
      const days = [...new Set(uses.map((use) => dayOf(use.at)))].sort()
      switch (streamKind(of)) {
        case 'batch': {
          const batch = foldBatch(facts, of, state.asOf)
          return batch
            ? [
                {
                  of,
                  kind: 'batch',
                  name: batch.number,
                  what: `${batch.received.product}, ${batch.received.role}${uses.every((use) => !isRealUse(use)) ? ', looked at and not used' : ''}`,
                  papers: [
                    batch.received.certificate ? `certificate ${batch.received.certificate}` : 'no certificate stated',
                    batch.expiresOn ? `use by ${batch.expiresOn}` : 'no use-by day stated',
                  ],
                  uses,
                },
              ]
            : []
        }
        case 'instrument': {
          const instrument = foldInstrument(facts, of, state.asOf)
          if (!instrument) return []
          const papers = days.map((day) => {
            const one = certificateOn(instrument, day)
            return `${day}: ${one ? `${one.body.certificate}, to ${one.body.dueOn}` : 'no certificate in force'}`
          })
          return [{ of, kind: 'instrument', name: instrument.number, what: instrument.kind, papers, uses }]
        }
        case 'person': {
          const person = foldPerson(facts, of, state.asOf)
          if (!person) return []
          const corrected = new Set(person.qualifications.map((one) => one.body.corrects))
          const standing = person.qualifications.filter((one) => !corrected.has(one.id))
          const papers = standing.map((one) => `${one.body.number} ${one.body.task} to ${one.body.validTo}`)
          return [
            {
              of,
              kind: 'person',
              name: person.name,
              what: `${person.title}, ${person.party}`,
              papers: papers.length > 0 ? papers : ['no qualification recorded'],
              uses,
            },
          ]
        }
        default:
          return []
      }
    }),
  }
}
