'use client'
import { useId } from 'react'
import { type Control, type FieldValues, useController } from 'react-hook-form'
import { FieldShell } from './field-shell'
import { useKeyDock } from './key-dock'

type Props = {
  control: Control<FieldValues>
  path: string
  label: string
  hint?: string | undefined
  optional?: boolean | undefined
}

/** A line or a paragraph of text. Empty is absent, never an empty string. */
export function TextField({
  control,
  path,
  label,
  hint,
  optional,
  long = false,
  type = 'text',
}: Props & { long?: boolean; type?: 'text' | 'date' }) {
  const id = useId()
  const { field, fieldState } = useController({ control, name: path })
  const text = typeof field.value === 'string' ? field.value : ''
  const shared = {
    id,
    value: text,
    onBlur: field.onBlur,
    'aria-invalid': fieldState.invalid,
    'aria-describedby': `${id}-about`,
    onChange: (event: { target: { value: string } }) =>
      field.onChange(event.target.value === '' ? undefined : event.target.value),
  }
  return (
    <FieldShell id={id} label={label} hint={hint} optional={optional} error={fieldState.error}>
      {long ? (
        <textarea {...shared} ref={field.ref} />
      ) : (
        <input {...shared} ref={field.ref} type={type} autoComplete="off" />
      )}
    </FieldShell>
  )
}

/** A whole number such as a ply number. */
export function WholeField({ control, path, label, hint, optional }: Props) {
  const id = useId()
  const { field, fieldState } = useController({ control, name: path })
  const shown = typeof field.value === 'number' || typeof field.value === 'string' ? String(field.value) : ''
  const write = (typed: string) => {
    const text = typed.trim()
    field.onChange(text === '' ? undefined : /^\d{1,4}$/.test(text) ? Number(text) : text)
  }
  const allows = { point: false, sign: false, limits: false }
  const { leave, ...keyed } = useKeyDock(id, { label, unit: '', text: shown, write, allows })
  return (
    <FieldShell id={id} label={label} hint={hint} optional={optional} error={fieldState.error} wrongText={shown}>
      <input
        id={id}
        ref={field.ref}
        {...keyed}
        autoComplete="off"
        value={shown}
        onBlur={() => {
          leave()
          field.onBlur()
        }}
        aria-invalid={fieldState.invalid}
        aria-describedby={`${id}-about`}
        onChange={(event) => write(event.target.value)}
      />
    </FieldShell>
  )
}

/** One of a few words; nothing is chosen beforehand. */
export function ChoiceField({
  control,
  path,
  label,
  hint,
  optional,
  options,
  shown,
}: Props & { options: readonly string[]; shown?: (option: string) => string }) {
  const id = useId()
  const { field, fieldState } = useController({ control, name: path })
  return (
    <FieldShell id={id} as="fieldset" label={label} hint={hint} optional={optional} error={fieldState.error}>
      <div className="choice">
        {options.map((option, place) => (
          <label key={option}>
            <input
              type={optional ? 'checkbox' : 'radio'}
              name={`${id}-choice`}
              ref={place === 0 ? field.ref : undefined}
              checked={field.value === option}
              onBlur={field.onBlur}
              onChange={(event) => field.onChange(event.target.checked ? option : undefined)}
            />
            {shown ? shown(option) : option}
          </label>
        ))}
      </div>
    </FieldShell>
  )
}

const CLOCKS = ['12', '1', '2', '3', '4', '5', '6', '7', '8', '9', '10', '11']

/** A clock position, from the whole hours. */
export function ClockField(props: Props) {
  return <SelectField {...props} options={CLOCKS.map((clock) => ({ id: clock, label: `${clock} o’clock` }))} />
}

/** One of a longer list, by its name. */
export function SelectField({
  control,
  path,
  label,
  hint,
  optional,
  options,
}: Props & { options: readonly { id: string; label: string; note?: string; isBarred?: boolean }[] }) {
  const id = useId()
  const { field, fieldState } = useController({ control, name: path })
  const chosen = options.find((option) => option.id === field.value)
  return (
    <FieldShell id={id} label={label} hint={hint} optional={optional} error={fieldState.error}>
      <select
        id={id}
        ref={field.ref}
        value={typeof field.value === 'string' ? field.value : ''}
        onBlur={field.onBlur}
        aria-invalid={fieldState.invalid}
        aria-describedby={`${id}-about`}
        onChange={(event) => field.onChange(event.target.value === '' ? undefined : event.target.value)}
      >
        <option value="">Choose</option>
        {options.map((option) => (
          <option key={option.id} value={option.id}>
            {option.label}
            {option.isBarred ? ' (barred)' : ''}
          </option>
        ))}
      </select>
      {chosen?.note ? <span className={chosen.isBarred ? 'wrong' : 'hint'}>{chosen.note}</span> : null}
      {options.length === 0 ? <span className="hint">None is registered yet.</span> : null}
    </FieldShell>
  )
}
