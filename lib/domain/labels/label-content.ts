import { type Gs1Elements, parseGs1, showGs1, symbolTextOf } from '@/lib/calc/gs1-elements'
import { isRefused } from '@/lib/calc/refusal'
import type { StreamId } from '../facts/fact'
import type { CalendarDay } from '../time'

/** What is printed: the text that a writer of symbols takes, whether it is GS1, the same for people, and lines from large to small. */
export type LabelContent = {
  symbol: { text: string; isGs1: boolean }
  human: string
  title: string
  lines: readonly string[]
  standing: string
}

/** Words that stand on every label: a label tells which thing it is, it gives no leave. */
export const LABEL_STANDING =
  'This label tells which one it is. It gives no leave to use or to work: the record and the permit do.'

function gs1Or(elements: Gs1Elements, stream: StreamId): Pick<LabelContent, 'symbol' | 'human'> {
  const human = showGs1(elements)
  // Asked of the reader itself: what is printed must read back, or our own number stands in its place.
  const read = human === '' ? null : parseGs1({ text: human, referenceYear: 2000, identifiers: 'label' })
  const isReadBack = read !== null && !isRefused(read) && symbolTextOf(read.elements) === symbolTextOf(elements)
  return isReadBack
    ? { symbol: { text: symbolTextOf(elements), isGs1: true }, human }
    : { symbol: { text: stream, isGs1: false }, human: stream }
}

function yymmdd(day: CalendarDay): string {
  return day.slice(2, 4) + day.slice(5, 7) + day.slice(8, 10)
}

/**
 * The label of a batch: (01) article number, (11) made and (17) use-by where known, (10) batch number. A number that GS1 cannot hold
 * (too long, other signs) gives our own number instead.
 */
export function batchLabel(batch: {
  stream: StreamId
  number: string
  product: string
  gtin: string | null
  madeOn: CalendarDay | null
  expiresOn: CalendarDay | null
}): LabelContent {
  const elements: Gs1Elements = {
    ...(batch.gtin === null ? {} : { '01': batch.gtin }),
    ...(batch.madeOn === null ? {} : { '11': yymmdd(batch.madeOn) }),
    ...(batch.expiresOn === null ? {} : { '17': yymmdd(batch.expiresOn) }),
    '10': batch.number,
  }
  return {
    ...gs1Or(elements, batch.stream),
    title: `Batch ${batch.number}`,
    lines: [batch.product, batch.expiresOn === null ? 'Use by: not stated' : `Use by ${batch.expiresOn}`],
    standing: LABEL_STANDING,
  }
}

/** The label of an instrument: (8004) the asset number where one is known, else our own number. */
export function instrumentLabel(instrument: {
  stream: StreamId
  number: string
  kind: string
  serial: string | null
  asset: string | null
}): LabelContent {
  return {
    ...gs1Or(instrument.asset === null ? {} : { '8004': instrument.asset }, instrument.stream),
    title: `Instrument ${instrument.number}`,
    lines: [instrument.kind, ...(instrument.serial === null ? [] : [`Serial ${instrument.serial}`])],
    standing: LABEL_STANDING,
  }
}

/** The label of a repair: (8004) where it was given an asset number, else our own number; its restrictions as handed over. */
export function repairLabel(repair: {
  stream: StreamId
  number: string
  line: string
  place: string
  label: string | null
  asset: string | null
  nextInspectionOn: CalendarDay | null
  restrictions: readonly string[]
}): LabelContent {
  return {
    ...gs1Or(repair.asset === null ? {} : { '8004': repair.asset }, repair.stream),
    title: `Repair ${repair.number}`,
    lines: [
      ...(repair.label === null ? [] : [`Label ${repair.label}`]),
      repair.line,
      repair.place,
      ...(repair.nextInspectionOn === null ? [] : [`Next inspection ${repair.nextInspectionOn}`]),
    ],
    standing: [...repair.restrictions, LABEL_STANDING].join(' '),
  }
}
