'use client'
import { type Control, type FieldValues, useController } from 'react-hook-form'
import { PARTICIPATION, PARTIES, type Party } from '@/lib/domain/roles'

const WORDS = { H: 'H hold', W: 'W witness', R: 'R review', M: 'M monitor' } as const

/** How each party takes part in a point: hold, witness, review, monitor, or not. */
export function ParticipationFields({ control, under }: { control: Control<FieldValues>; under: string }) {
  return (
    <fieldset className="field">
      <legend className="label">Who takes part</legend>
      <div className="fields">
        {PARTIES.map((party) => (
          <PartyField key={party} control={control} path={`${under}.${party}`} party={party} />
        ))}
      </div>
    </fieldset>
  )
}

function PartyField({ control, path, party }: { control: Control<FieldValues>; path: string; party: Party }) {
  const { field } = useController({ control, name: path })
  return (
    <div className="field">
      <label htmlFor={path}>{party}</label>
      <select
        id={path}
        ref={field.ref}
        value={typeof field.value === 'string' ? field.value : ''}
        onBlur={field.onBlur}
        onChange={(event) => field.onChange(event.target.value === '' ? null : event.target.value)}
      >
        <option value="">· none</option>
        {PARTICIPATION.map((code) => (
          <option key={code} value={code}>
            {WORDS[code]}
          </option>
        ))}
      </select>
    </div>
  )
}
