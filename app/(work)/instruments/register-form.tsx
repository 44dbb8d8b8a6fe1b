import { ActForm } from '@/app/_desk/act-form'
import type { DeskField } from '@/app/_desk/desk-field'
import { registerInstrumentAction } from '@/app/(work)/actions/instrument-actions'
import { showUnit, type Unit } from '@/lib/domain/reading'

const MEASURES: readonly Unit[] = [
  'um',
  'mil',
  'mm',
  'degC',
  '%',
  'MPa',
  'bar',
  'psi',
  'ShoreD',
  'ShoreA',
  'Barcol',
  'g',
  'kg',
  'mg/m2',
  'uS/cm',
]
const FIELDS: readonly DeskField[] = [
  {
    kind: 'label',
    fills: 'instrument',
    name: 'label',
    label: 'Label text, scanned or pasted',
    hint: 'Such as (8004)… or (21)…. Leave empty when the plate has no code.',
  },
  { kind: 'text', name: 'number', label: 'Instrument number', hint: 'As on its plate' },
  { kind: 'text', name: 'kind', label: 'Kind', hint: 'Such as durometer Shore D' },
  { kind: 'text', name: 'serial', label: 'Serial number', optional: true },
  { kind: 'text', name: 'asset', label: 'Asset number, GS1 (8004)', hint: 'When one was given to it', optional: true },
  { kind: 'decimal', name: 'resolution', label: 'Resolution', hint: 'In its own unit', optional: true },
  {
    kind: 'several',
    name: 'measures',
    label: 'Reads in',
    options: MEASURES.map((unit) => ({ id: unit, label: showUnit(unit) })),
  },
]

/** Register an instrument under the number of its plate. */
export function RegisterForm({ utcOffset }: { utcOffset: string }) {
  return (
    <ActForm
      action={registerInstrumentAction}
      kind="instrument-registered"
      stream={{ kind: 'instrument', from: 'number' }}
      fields={FIELDS}
      listsWhenAbsent={['measures']}
      utcOffset={utcOffset}
      submit="Register"
      done="Registered."
      goTo="/instruments/{name}"
    />
  )
}
