import type { StreamId } from '../facts/fact'
import type { Fact } from '../facts/fact-kinds'
import type { Moment } from '../time'
import { ofKind, ofStream, orderFacts } from './order-facts'
import { isStanding, quarantinesOf } from './quarantines'
import type { InstrumentState } from './store-states'

/** An instrument as its stream tells at `asOf`: every certificate ever recorded stays; or null when it was never registered. */
export function foldInstrument(facts: readonly Fact[], stream: StreamId, asOf: Moment): InstrumentState | null {
  const own = ofStream(orderFacts(facts, asOf), stream)
  const registered = ofKind(own, 'instrument-registered')[0]
  if (!registered) return null
  const quarantines = quarantinesOf(own)
  return {
    stream,
    number: registered.body.number,
    kind: registered.body.kind,
    ...(registered.body.serial === undefined ? {} : { serial: registered.body.serial }),
    ...(registered.body.asset === undefined ? {} : { asset: registered.body.asset }),
    certificates: ofKind(own, 'certificate-recorded'),
    checks: ofKind(own, 'check-made'),
    foundWrong: ofKind(own, 'found-wrong'),
    isQuarantined: isStanding(quarantines),
    quarantines,
  }
}
