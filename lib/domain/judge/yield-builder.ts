import type { PersonId, StreamId } from '../facts/fact'
import type { Reading } from '../reading'
import type { MarkedReading, YesNo } from '../records/common'
import type { RecordType } from '../records/record'
import type { Moment } from '../time'
import type { DraftRecord, RecordYield, Tapped, YieldedUse } from './judge-context'
import type { EventName, FlagName, QuantityName } from './quantity-names'

/** A record of one type, perhaps half filled. */
export type DraftOf<T extends RecordType> = Extract<DraftRecord, { type: T }>

type Source = { instrument?: StreamId | undefined; at?: Moment | undefined; tapped?: Tapped[] }
type Amount = { digits: number; scale: number; unit: string }

/** Collects what a record yields. Anything missing is left out: it never becomes zero, no or now. */
export type YieldBuilder = {
  observedAt: Moment
  reading(quantity: QuantityName, mark: string, reading: Reading | undefined, source?: Source): void
  readings(quantity: QuantityName, list: readonly Partial<MarkedReading>[] | undefined, source?: Source): void
  event(name: EventName, at: Moment | undefined, of?: string): void
  flag(name: FlagName, value: YesNo | undefined): void
  batch(of: StreamId | undefined, role: string, at: Moment | undefined, into?: string, amount?: Amount): void
  instrument(of: StreamId | undefined, role: string, at?: Moment): void
  person(
    of: PersonId | undefined,
    role: string,
    at?: Moment,
    extra?: { into?: string; supervisedBy?: PersonId | undefined },
  ): void
  done(): RecordYield
}

/** How each type of record fills a builder. */
export type YieldTable<T extends RecordType> = { [K in T]: (record: DraftOf<K>, into: YieldBuilder) => void }

/** The stream of a person. */
export function personStream(person: PersonId): StreamId {
  return `person:${person}` as StreamId
}

/** Start collecting for a record observed at a moment: uses and readings without a time of their own were at that moment. */
export function startYield(observedAt: Moment): YieldBuilder {
  const all: RecordYield = { readings: [], events: [], flags: [], uses: [] }
  const use = (one: Omit<YieldedUse, 'at'>, at: Moment | undefined) => all.uses.push({ ...one, at: at ?? observedAt })
  const reading: YieldBuilder['reading'] = (quantity, mark, value, source) => {
    if (!value) return
    const at = source?.at ?? observedAt
    all.readings.push({
      quantity,
      mark,
      reading: value,
      at,
      ...(source?.instrument ? { instrument: source.instrument } : {}),
      ...(source?.tapped?.length ? { tapped: source.tapped } : {}),
    })
  }
  return {
    observedAt,
    reading,
    readings(quantity, list, source) {
      list?.forEach((one, index) => {
        reading(quantity, one.mark ?? `no. ${index + 1}`, one.reading, {
          instrument: source?.instrument,
          at: one.at ?? source?.at,
          tapped: tappedOf([one]),
        })
      })
    },
    event(name, at, of) {
      if (at) all.events.push({ name, at, ...(of ? { of } : {}) })
    },
    flag(name, value) {
      if (value) all.flags.push({ name, value })
    },
    batch(of, role, at, into, amount) {
      if (of) use({ of, role, ...(into ? { into } : {}), ...(amount ? { amount: amountOf(amount) } : {}) }, at)
    },
    instrument(of, role, at) {
      if (of) use({ of, role }, at)
    },
    person(of, role, at, extra) {
      if (!of) return
      use(
        {
          of: personStream(of),
          role,
          ...(extra?.into ? { into: extra.into } : {}),
          ...(extra?.supervisedBy ? { supervisedBy: extra.supervisedBy } : {}),
        },
        at,
      )
    },
    done: () => all,
  }
}

/** The readings among some that were said to come from taps. */
export function tappedOf(list: readonly Partial<MarkedReading>[]): Tapped[] {
  return list.flatMap(({ reading, taps }) => (reading && taps && taps.length > 0 ? [{ reading, taps }] : []))
}

function amountOf({ digits, scale, unit }: Amount): Amount {
  return { digits, scale, unit }
}
