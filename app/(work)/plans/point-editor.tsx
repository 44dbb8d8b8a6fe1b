'use client'
import { useState } from 'react'
import { type Control, type FieldValues, useWatch } from 'react-hook-form'
import { DeskControl } from '@/app/_desk/desk-control'
import type { Choice, DeskField } from '@/app/_desk/desk-field'
import { Letters } from '@/app/_ui/letters'
import { FORMS } from '@/lib/capture/forms/form-table'
import { RECORD_TYPES } from '@/lib/domain/records/record'
import { MEANINGS, PARTIES, type Participation, type Party, ROLES } from '@/lib/domain/roles'
import { ParticipationFields } from './participation-fields'

const words = (list: readonly string[]): Choice[] => list.map((one) => ({ id: one, label: one.replaceAll('-', ' ') }))
const RECORDS: DeskField = {
  kind: 'list',
  name: 'records',
  label: 'What is recorded',
  each: 'Record',
  addLabel: 'Add a record',
  of: [
    {
      kind: 'select',
      name: 'type',
      label: 'Form',
      options: RECORD_TYPES.map((type) => ({ id: type, label: FORMS[type].title })),
    },
    { kind: 'whole', name: 'atLeast', label: 'At least', hint: '0: may be recorded' },
  ],
}
const SIGNATURES: DeskField = {
  kind: 'list',
  name: 'signatures',
  label: 'Signatures before release',
  each: 'Signature',
  addLabel: 'Add a signature',
  of: [
    { kind: 'select', name: 'meaning', label: 'Meaning', options: words(MEANINGS) },
    { kind: 'select', name: 'role', label: 'By', options: words(ROLES) },
  ],
}
const PHOTOS: DeskField = {
  kind: 'list',
  name: 'photos',
  label: 'Photos demanded',
  each: 'Photo',
  addLabel: 'Add a photo',
  of: [
    { kind: 'text', name: 'show', label: 'It must show' },
    { kind: 'whole', name: 'atLeast', label: 'How many' },
    { kind: 'text', name: 'id', label: 'Short name', hint: 'Small letters, digits and dashes' },
  ],
}

type PointValue = {
  no?: string
  title?: string
  participation?: Record<Party, Participation | null>
  records?: unknown[]
  signatures?: unknown[]
  photos?: unknown[]
  blocks?: string[]
}

/** One point of a draft plan: a line with its letters and counts; opened, everything it asks for. */
export function PointEditor({
  control,
  place,
  numbers,
  isFaulty,
  remove,
}: {
  control: Control<FieldValues>
  place: number
  numbers: readonly Choice[]
  isFaulty: boolean
  remove: () => void
}) {
  const under = `points.${place}`
  const value = (useWatch({ control, name: under }) ?? {}) as PointValue
  const [isOpen, setOpen] = useState(value.title === '')
  const participation = Object.fromEntries(
    PARTIES.map((party) => [party, value.participation?.[party] ?? null]),
  ) as Record<Party, Participation | null>
  return (
    <details className="act" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span>
          {value.no || '…'} {value.title || 'New point'}
        </span>
        <Letters participation={participation} />
        <span className={`small ${isFaulty ? 'fail' : 'quiet'}`}>
          {isFaulty
            ? 'not complete'
            : `blocks ${value.blocks?.length ?? 0} · photos ${value.photos?.length ?? 0} · signatures ${value.signatures?.length ?? 0}`}
        </span>
      </summary>
      {isOpen ? (
        <div className="act-body">
          <div className="fields">
            <DeskControl
              control={control}
              under={under}
              spec={{ kind: 'text', name: 'no', label: 'Point number', hint: 'Two digits' }}
            />
            <DeskControl control={control} under={under} spec={{ kind: 'text', name: 'title', label: 'Title' }} />
          </div>
          <ParticipationFields control={control} under={`${under}.participation`} />
          <DeskControl
            control={control}
            under={under}
            spec={{
              kind: 'several',
              name: 'blocks',
              label: 'Stays closed until this one is released',
              options: numbers.filter((one) => one.id !== value.no),
            }}
          />
          {[RECORDS, SIGNATURES, PHOTOS].map((spec) => (
            <DeskControl key={spec.name} control={control} under={under} spec={spec} />
          ))}
          <DeskControl
            control={control}
            under={under}
            spec={{
              kind: 'flag',
              name: 'selfRelease',
              label: 'A small crew may release its own work here',
              hint: 'Visible in the dossier',
            }}
          />
          <DeskControl
            control={control}
            under={under}
            spec={{ kind: 'lines', name: 'hazards', label: 'Hazards cautioned about', optional: true }}
          />
          <div>
            <button type="button" className="button stop" onClick={remove}>
              Take this point away
            </button>
          </div>
        </div>
      ) : null}
    </details>
  )
}
