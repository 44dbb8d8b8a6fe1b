import { type StreamId, streamKind } from '../facts/fact'
import type { CalendarDay } from '../time'
import type { LabelMeaning } from './read-label'

export type KnownBatch = {
  stream: StreamId
  number: string
  gtin: string | null
  /** The use-by days that a right label may state: as received, and as a maker's letter moved it. */
  useBy: readonly CalendarDay[]
}
export type KnownInstrument = { stream: StreamId; number: string; serial: string | null; asset: string | null }
/** `label` and `asset` are the numbers of the label fixed on the repair at handover. */
export type KnownRepair = { stream: StreamId; number: string; label: string | null; asset: string | null }
export type KnownThings = {
  batches: readonly KnownBatch[]
  instruments: readonly KnownInstrument[]
  repairs: readonly KnownRepair[]
}

export type Labelled = {
  stream: StreamId
  by: 'batch number' | 'article number' | 'serial number' | 'asset number' | 'own label' | 'number'
}

/** A thing that the label nearly names: same batch number, but another article; or the right batch with another use-by day. */
export type LabelDoubt = { stream: StreamId; what: 'other article' | 'other use-by day'; label: string; record: string }
export type LabelFinding = { found: Labelled[]; doubts: LabelDoubt[] }

const isSame = (a: string | null, b: string | undefined): boolean =>
  a !== null && b !== undefined && a.trim().toLowerCase() === b.trim().toLowerCase()

/** The batches, instruments and repairs that a label names, and what speaks against it. None: the label is not known here. */
export function findLabelled(meaning: LabelMeaning, known: KnownThings): LabelFinding {
  switch (meaning.kind) {
    case 'own':
      return {
        found: streamsOf(known, streamKind(meaning.stream))
          .filter(({ stream }) => stream === meaning.stream)
          .map(({ stream }) => ({ stream, by: 'own label' })),
        doubts: [],
      }
    case 'article':
      return { found: byArticle(known, meaning.gtin), doubts: [] }
    case 'text':
      return { found: byNumber(known, meaning.text), doubts: [] }
    case 'gs1':
      return byElements(meaning, known)
  }
}

function streamsOf(known: KnownThings, kind: string): readonly { stream: StreamId }[] {
  if (kind === 'batch') return known.batches
  return kind === 'instrument' ? known.instruments : known.repairs
}

function byArticle({ batches }: KnownThings, gtin: string): Labelled[] {
  return batches.filter((batch) => batch.gtin === gtin).map(({ stream }) => ({ stream, by: 'article number' }))
}

function byNumber({ batches, instruments, repairs }: KnownThings, text: string): Labelled[] {
  return [
    ...batches.filter(({ number }) => isSame(number, text)).map(({ stream }) => ({ stream, by: 'number' as const })),
    ...instruments
      .filter(({ number, serial, asset }) => isSame(number, text) || isSame(serial, text) || isSame(asset, text))
      .map(({ stream }) => ({ stream, by: 'number' as const })),
    ...repairs
      .filter(({ number, label, asset }) => isSame(number, text) || isSame(label, text) || isSame(asset, text))
      .map(({ stream }) => ({ stream, by: 'number' as const })),
  ]
}

function byElements({ elements, expiry }: LabelMeaning & { kind: 'gs1' }, known: KnownThings): LabelFinding {
  const asset = elements['8004']
  if (asset !== undefined)
    return {
      found: [
        ...known.instruments.filter((one) => isSame(one.asset, asset)),
        ...known.repairs.filter((one) => isSame(one.asset, asset) || isSame(one.label, asset)),
      ].map(({ stream }) => ({ stream, by: 'asset number' })),
      doubts: [],
    }
  const [number, gtin, serial] = [elements['10'], elements['01'], elements['21']]
  if (number === undefined) {
    const bySerial = known.instruments.filter((one) => isSame(one.serial, serial))
    if (bySerial.length > 0 || gtin === undefined)
      return { found: bySerial.map(({ stream }) => ({ stream, by: 'serial number' })), doubts: [] }
    return { found: byArticle(known, gtin), doubts: [] }
  }
  const numbered = known.batches.filter((batch) => isSame(batch.number, number))
  const isOther = (batch: KnownBatch) => gtin !== undefined && batch.gtin !== null && batch.gtin !== gtin
  return {
    found: numbered.filter((batch) => !isOther(batch)).map(({ stream }) => ({ stream, by: 'batch number' })),
    doubts: numbered.flatMap((batch): LabelDoubt[] => {
      if (isOther(batch))
        return [{ stream: batch.stream, what: 'other article', label: gtin ?? '', record: batch.gtin ?? '' }]
      return expiry === null || batch.useBy.length === 0 || batch.useBy.includes(expiry.date)
        ? []
        : [{ stream: batch.stream, what: 'other use-by day', label: expiry.date, record: batch.useBy.join(' or ') }]
    }),
  }
}
