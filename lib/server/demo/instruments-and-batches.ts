import { decimal } from '@/lib/domain/decimal'
import { type Measured, measured, type Unit } from '@/lib/domain/reading'
import { CERTIFICATE_UNCERTAINTY } from './completions'
import { QI, QJ, S } from './demo-people'
import { BATCHES, INSTRUMENTS, instrumentRow } from './demo-store-tables'
import { at } from './demo-time'
import type { FactScript } from './fact-script'

/** Instruments with the certificates that were valid then, their full check in April, and batches as received in May. */
export function scriptInstrumentsAndBatches(script: FactScript): void {
  for (const { id, kind, certificate, dueOn, unit, resolution } of INSTRUMENTS) {
    const stream = `instrument:${id}`
    script.write({
      stream,
      kind: 'instrument-registered',
      at: at('04-18', '09:00'),
      by: QJ,
      body: { number: id, kind, measures: [unit], resolution: decimal(resolution) },
    })
    script.write({
      stream,
      kind: 'certificate-recorded',
      at: at('04-18', '09:05'),
      by: QJ,
      body: {
        certificate,
        calibratedOn: `${Number(dueOn.slice(0, 4)) - 1}${dueOn.slice(4)}`,
        dueOn,
        ...uncertaintyOf(id, unit),
      },
    })
    writeCheck(script, id, '04-28', '15:00', 'full scale')
  }
  for (const {
    id,
    quantity,
    plyThickness,
    width,
    rollLength,
    certificate,
    role,
    product,
    gtin,
    expiresOn,
    expiryAsLabelled,
    label,
  } of BATCHES) {
    script.write({
      stream: `batch:${id}`,
      kind: 'batch-received',
      at: at('05-04', '10:00'),
      by: S,
      body: {
        number: id,
        role,
        product,
        gtin,
        expiresOn,
        quantity: measured(...quantity),
        certificate,
        storageMin: measured('5', 'degC'),
        storageMax: measured('25', 'degC'),
        ...(expiryAsLabelled ? { expiryAsLabelled } : {}),
        ...(label ? { label } : {}),
        ...(plyThickness ? { plyThickness: measured(plyThickness, 'mm') } : {}),
        ...(width ? { width: measured(width, 'mm') } : {}),
        ...(rollLength ? { rollLength: measured(rollLength, 'm') } : {}),
      },
    })
  }
}

function uncertaintyOf(id: string, unit: Unit): { expandedUncertainty?: Measured } {
  const text = CERTIFICATE_UNCERTAINTY[id]
  return text === undefined ? {} : { expandedUncertainty: measured(text, unit) }
}

/** One check on the reference piece. */
export function writeCheck(
  script: FactScript,
  id: string,
  day: string,
  clock: string,
  coverage: 'full scale' | 'mid scale',
) {
  const { unit, reference } = instrumentRow(id)
  return script.write({
    stream: `instrument:${id}`,
    kind: 'check-made',
    at: at(day, clock),
    by: QI,
    body: {
      coverage,
      reference: measured(reference[0], unit),
      read: measured(reference[1], unit),
      tolerance: measured(reference[2], unit),
      result: 'within',
    },
  })
}

const DAYS_OF_HD_03: [day: string, clock: string][] = [
  ['05-13', '07:20'],
  ['05-14', '14:05'],
  ['05-20', '08:05'],
  ['05-21', '08:55'],
  ['05-22', '08:25'],
]

/** What happened in the store in May: the expired filler, the daily mid-scale block of the durometer, waste and the count of RS-884. */
export function scriptStoreInMay(script: FactScript): void {
  script.write({
    stream: 'batch:FP-097',
    kind: 'batch-refused',
    at: at('05-12', '07:50'),
    by: S,
    body: { reason: 'Expired on 2026-04-30: refused at point 03.', repair: 'repair:MD-0041' },
  })
  script.write({
    stream: 'batch:FP-097',
    kind: 'batch-quarantined',
    at: at('05-12', '07:56'),
    by: S,
    body: { reason: 'Expired on 2026-04-30; two kits set apart in the locked cage.' },
  })
  for (const [day, clock] of DAYS_OF_HD_03) writeCheck(script, 'HD-03', day, clock, 'mid scale')
  script.write({
    stream: 'batch:RS-884',
    kind: 'batch-wasted',
    at: at('05-19', '15:30'),
    by: S,
    body: { quantity: measured('0.140', 'kg'), reason: 'Left in the buckets and on the rollers.' },
  })
  script.write({
    stream: 'batch:RS-884',
    kind: 'batch-counted',
    at: at('05-26', '10:00'),
    by: S,
    body: { quantity: measured('11.500', 'kg') },
  })
}
