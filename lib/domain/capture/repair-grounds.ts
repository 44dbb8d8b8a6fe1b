import type { StreamId } from '../facts/fact'
import type { Fact } from '../facts/fact-kinds'
import { ofKind } from '../fold/order-facts'

/** What a new repair may stand on: the latest issued revision of each specification and plan. */
export type RepairGrounds = {
  specifications: { stream: StreamId; label: string; arrest: string[]; wrap: string }[]
  plans: { stream: StreamId; label: string }[]
}

/** The grounds among facts given in the order received. */
export function repairGroundsOf(facts: readonly Fact[]): RepairGrounds {
  const latest = <F extends Fact>(all: F[]) => [...new Map(all.map((one) => [one.stream, one])).values()]
  return {
    specifications: latest(ofKind(facts, 'specification-issued')).map(({ stream, body }) => ({
      stream,
      label: `${body.body.number} rev ${body.revision}: ${body.body.title}`,
      arrest: body.body.arrest,
      wrap: body.body.wrap,
    })),
    plans: latest(ofKind(facts, 'plan-issued')).map(({ stream, body }) => ({
      stream,
      label: `${body.body.number} rev ${body.revision}: ${body.body.title}`,
    })),
  }
}
