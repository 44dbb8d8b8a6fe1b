import type { BodyInput } from './fact-script'

/** Instruments as given: certificate and due day, with what each measures and its daily reference piece (invented). */
export type InstrumentRow = {
  id: string
  kind: string
  certificate: string
  dueOn: string
  unit: BodyInput<'instrument-registered'>['measures'][number]
  resolution: string
  reference: [piece: string, read: string, tolerance: string]
}

export const INSTRUMENTS: readonly InstrumentRow[] = [
  {
    id: 'SP-07',
    kind: 'surface gauge',
    certificate: 'C-3310',
    dueOn: '2026-10-14',
    unit: 'um',
    resolution: '1',
    reference: ['75', '76', '3'],
  },
  {
    id: 'TH-11',
    kind: 'hygrometer',
    certificate: 'C-3188',
    dueOn: '2026-05-24',
    unit: '%',
    resolution: '1',
    reference: ['75', '75', '3'],
  },
  {
    id: 'TH-12',
    kind: 'hygrometer',
    certificate: 'C-3402',
    dueOn: '2027-01-20',
    unit: '%',
    resolution: '1',
    reference: ['75', '76', '3'],
  },
  {
    id: 'ST-04',
    kind: 'steel thermometer',
    certificate: 'C-3377',
    dueOn: '2026-12-02',
    unit: 'degC',
    resolution: '0.1',
    reference: ['0.0', '0.1', '0.3'],
  },
  {
    id: 'HD-03',
    kind: 'durometer',
    certificate: 'C-3291',
    dueOn: '2026-11-30',
    unit: 'ShoreD',
    resolution: '1',
    reference: ['46', '46', '2'],
  },
  {
    id: 'HD-05',
    kind: 'durometer',
    certificate: 'C-3450',
    dueOn: '2027-03-09',
    unit: 'ShoreD',
    resolution: '1',
    reference: ['46', '47', '2'],
  },
  {
    id: 'UT-02',
    kind: 'ultrasonic wall gauge',
    certificate: 'C-3315',
    dueOn: '2026-10-28',
    unit: 'mm',
    resolution: '0.1',
    reference: ['10.0', '10.0', '0.1'],
  },
  {
    id: 'LG-06',
    kind: 'laminate gauge',
    certificate: 'C-3366',
    dueOn: '2026-11-19',
    unit: 'mm',
    resolution: '0.1',
    reference: ['5.0', '5.0', '0.1'],
  },
  {
    id: 'WB-09',
    kind: 'scale',
    certificate: 'C-3340',
    dueOn: '2026-09-30',
    unit: 'g',
    resolution: '1',
    reference: ['500', '500', '1'],
  },
  {
    id: 'PG-21',
    kind: 'pressure gauge',
    certificate: 'C-3401',
    dueOn: '2026-12-15',
    unit: 'MPa',
    resolution: '0.001',
    reference: ['1.000', '1.001', '0.005'],
  },
  {
    id: 'PG-22',
    kind: 'pressure gauge',
    certificate: 'C-3403',
    dueOn: '2026-12-15',
    unit: 'MPa',
    resolution: '0.001',
    reference: ['1.000', '0.999', '0.005'],
  },
  {
    id: 'SM-02',
    kind: 'salt meter',
    certificate: 'C-3359',
    dueOn: '2026-11-05',
    unit: 'uS/cm',
    resolution: '1',
    reference: ['84', '84', '2'],
  },
  {
    id: 'CL-08',
    kind: 'cure logger',
    certificate: 'C-3388',
    dueOn: '2026-12-20',
    unit: 'degC',
    resolution: '0.1',
    reference: ['20.0', '20.1', '0.3'],
  },
]

/** Batches as given, with what the story leaves open: made day, storage, certificate number. */
export type BatchRow = {
  id: string
  role: BodyInput<'batch-received'>['role']
  product: string
  gtin: string
  expiresOn: string | null
  expiryAsLabelled?: string
  label?: string
  quantity: [text: string, unit: NonNullable<BodyInput<'batch-received'>['quantity']>['unit']]
  certificate: string
  plyThickness?: string
  width?: string
  rollLength?: string
}

export const BATCHES: readonly BatchRow[] = [
  {
    id: 'RS-884',
    role: 'resin',
    product: 'laminating resin A',
    gtin: '09521234000013',
    expiresOn: '2026-11-30',
    label: '(01)09521234000013(17)261130(10)RS-884',
    quantity: ['15.000', 'kg'],
    certificate: 'MC-884',
  },
  {
    id: 'RS-901',
    role: 'resin',
    product: 'laminating resin A',
    gtin: '09521234000013',
    expiresOn: '2027-01-31',
    label: '(01)09521234000013(17)270131(10)RS-901',
    quantity: ['10.000', 'kg'],
    certificate: 'MC-901',
  },
  {
    id: 'HB-2270',
    role: 'hardener',
    product: 'hardener B',
    gtin: '09521234000020',
    expiresOn: '2026-10-31',
    label: '(01)09521234000020(17)261031(10)HB-2270',
    quantity: ['4.000', 'kg'],
    certificate: 'MC-2270',
  },
  {
    id: 'HB-2291',
    role: 'hardener',
    product: 'hardener B',
    gtin: '09521234000020',
    expiresOn: '2026-12-31',
    label: '(01)09521234000020(17)261231(10)HB-2291',
    quantity: ['6.000', 'kg'],
    certificate: 'MC-2291',
  },
  {
    id: 'FP-118',
    role: 'filler',
    product: 'filler kit A+B',
    gtin: '09521234000037',
    expiresOn: '2026-09-30',
    label: '(01)09521234000037(17)260930(10)FP-118',
    quantity: ['6', 'kits'],
    certificate: 'MC-118',
  },
  {
    id: 'FP-121',
    role: 'filler',
    product: 'filler kit A+B',
    gtin: '09521234000037',
    expiresOn: '2026-10-31',
    label: '(01)09521234000037(17)261031(10)FP-121',
    quantity: ['4', 'kits'],
    certificate: 'MC-121',
  },
  {
    id: 'FP-097',
    role: 'filler',
    product: 'filler kit A+B',
    gtin: '09521234000037',
    expiresOn: '2026-04-30',
    label: '(01)09521234000037(17)260430(10)FP-097',
    quantity: ['2', 'kits'],
    certificate: 'MC-097',
  },
  {
    id: 'PR-357',
    role: 'primer',
    product: 'primer',
    gtin: '09521234000044',
    expiresOn: '2026-06-30',
    expiryAsLabelled: '260600',
    label: '(01)09521234000044(17)260600(10)PR-357',
    quantity: ['3.000', 'kg'],
    certificate: 'MC-357',
  },
  {
    id: 'FB-0616',
    role: 'fabric',
    product: 'glass fabric',
    gtin: '09521234000051',
    expiresOn: null,
    quantity: ['60', 'm'],
    certificate: 'MC-0616',
    plyThickness: '0.62',
  },
  {
    id: 'PS-0419',
    role: 'putty',
    product: 'putty stick',
    gtin: '09521234000068',
    expiresOn: '2027-02-28',
    label: '(01)09521234000068(17)270228(10)PS-0419',
    quantity: ['24', 'pcs'],
    certificate: 'MC-0419',
  },
  {
    id: 'WT-2206',
    role: 'tape',
    product: 'water-activated tape 75 mm × 7.5 m',
    gtin: '09521234000075',
    expiresOn: '2026-12-31',
    label: '(01)09521234000075(17)261231(10)WT-2206',
    quantity: ['12', 'rolls'],
    certificate: 'MC-2206',
    plyThickness: '0.42',
    width: '75',
    rollLength: '7.5',
  },
  {
    id: 'SB-77',
    role: 'band',
    product: 'stainless band and fasteners',
    gtin: '09521234000082',
    expiresOn: null,
    quantity: ['10', 'sets'],
    certificate: 'MC-77',
  },
]

/** A batch of the table. @throws RangeError for an id that is not in it */
export function batchRow(id: string): BatchRow {
  const found = BATCHES.find((one) => one.id === id)
  if (!found) throw new RangeError(`Expected a batch of the demo, received ${id}`)
  return found
}

/** An instrument of the table. @throws RangeError for an id that is not in it */
export function instrumentRow(id: string): InstrumentRow {
  const found = INSTRUMENTS.find((one) => one.id === id)
  if (!found) throw new RangeError(`Expected an instrument of the demo, received ${id}`)
  return found
}
