import { ActForm } from '@/app/_desk/act-form'
import type { DeskField } from '@/app/_desk/desk-field'
import { receiveBatchAction } from '@/app/(work)/actions/batch-actions'

const AMOUNT = ['kg', 'g', 'kits', 'rolls', 'm', 'pcs', 'sets', 'ml'] as const
const FIELDS: readonly DeskField[] = [
  {
    kind: 'label',
    fills: 'batch',
    name: 'label',
    label: 'Label text, scanned or pasted',
    hint: 'Such as (01)…(17)…(10)…. Leave empty when the label is not a GS1 one.',
  },
  { kind: 'text', name: 'number', label: 'Batch number', hint: 'As printed on the package' },
  {
    kind: 'choice',
    name: 'role',
    label: 'What it is',
    options: ['resin', 'hardener', 'filler', 'primer', 'fabric', 'tape', 'putty', 'band', 'release film', 'other'],
  },
  { kind: 'text', name: 'product', label: 'Product name' },
  { kind: 'text', name: 'gtin', label: 'Article number (GTIN), 14 digits', optional: true },
  {
    kind: 'day',
    name: 'expiresOn',
    label: 'Use by',
    hint: 'A label with month only counts to its last day. Leave empty only when none is stated.',
    optional: true,
  },
  { kind: 'text', name: 'expiryAsLabelled', label: 'Use by, as labelled', optional: true },
  { kind: 'day', name: 'madeOn', label: 'Made on', optional: true },
  { kind: 'measured', name: 'quantity', label: 'Amount received', units: AMOUNT, optional: true },
  { kind: 'text', name: 'certificate', label: 'Certificate reference', optional: true },
  { kind: 'whole', name: 'openedLifeDays', label: 'Days it keeps once opened', optional: true },
  { kind: 'measured', name: 'storageMin', label: 'Store at or above', units: ['degC'], optional: true },
  { kind: 'measured', name: 'storageMax', label: 'Store at or below', units: ['degC'], optional: true },
  { kind: 'measured', name: 'plyThickness', label: 'Thickness of one cured ply', units: ['mm'], optional: true },
  { kind: 'measured', name: 'width', label: 'Width', units: ['mm'], optional: true },
  { kind: 'measured', name: 'rollLength', label: 'Length of a roll', units: ['m'], optional: true },
]

/** Receive a batch: the label fills what it says; the rest is keyed. An absent use-by day or amount is recorded as not stated, never as zero. */
export function ReceiveForm({ utcOffset, draftKey }: { utcOffset: string; draftKey: string }) {
  return (
    <ActForm
      action={receiveBatchAction}
      kind="batch-received"
      stream={{ kind: 'batch', from: 'number' }}
      fields={FIELDS}
      utcOffset={utcOffset}
      draftKey={draftKey}
      nullWhenAbsent={['expiresOn', 'quantity']}
      submit="Receive the batch"
      done="The batch is in the store."
      goTo="/batches/{name}"
    />
  )
}
