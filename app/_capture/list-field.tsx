'use client'
import { Fragment, type ReactNode, useState } from 'react'
import { type Control, type FieldValues, useController, useFormContext, useWatch } from 'react-hook-form'
import type { FieldSpec } from '@/lib/capture/forms/field-spec'
import { messageOf } from './field-shell'

/** Most entries shown at once: a logger's series has thousands. */
const PAGE = 20

/** A list that grows by a tap. Items keep their own drafts; taking one away asks for no default in its place. */
export function ListField({
  control,
  path,
  label,
  hint,
  optional,
  each,
  addLabel,
  atLeast,
  of,
  draw,
}: {
  control: Control<FieldValues>
  path: string
  label: string
  hint?: string | undefined
  optional?: boolean | undefined
  each: string
  addLabel: string
  atLeast: number
  of: readonly FieldSpec[]
  draw: (spec: FieldSpec, under: string) => ReactNode
}) {
  const { fieldState } = useController({ control, name: path })
  const { setValue, getValues } = useFormContext<FieldValues>()
  const watched: unknown = useWatch({ control, name: path })
  const [generation, setGeneration] = useState(0)
  const [asked, setFrom] = useState(0)
  const present: unknown[] = Array.isArray(watched) ? watched : []
  const isPlain = of.length === 1 && of[0]?.name === ''
  const blank = isPlain ? undefined : {}
  const shown =
    present.length < atLeast ? [...present, ...Array.from({ length: atLeast - present.length }, () => blank)] : present
  const from = shown.length > PAGE ? Math.min(asked, Math.floor((shown.length - 1) / PAGE) * PAGE) : 0
  /** Entries as they are now: what was keyed into them since this list was drawn is in the form, not in this closure. */
  const entries = (): unknown[] => {
    const now: unknown = getValues(path)
    const list: unknown[] = Array.isArray(now) ? [...now] : []
    while (list.length < shown.length) list.push(blank)
    return list
  }
  const put = (next: unknown[]) => {
    setValue(path, optional && next.length === 0 ? undefined : next, { shouldDirty: true })
    setGeneration((count) => count + 1)
  }
  const message = present.length === 0 ? messageOf(fieldState.error) : null
  return (
    <fieldset className="field">
      <legend className="label">{label}</legend>
      {hint ? <span className="hint">{hint}</span> : null}
      {shown.length > PAGE ? (
        <div className="row">
          <span className="quiet">
            {from + 1} to {Math.min(from + PAGE, shown.length)} of {shown.length}
          </span>
          <button type="button" className="button plain" disabled={from === 0} onClick={() => setFrom(from - PAGE)}>
            Earlier ones
          </button>
          <button
            type="button"
            className="button plain"
            disabled={from + PAGE >= shown.length}
            onClick={() => setFrom(from + PAGE)}
          >
            Later ones
          </button>
          <button type="button" className="button plain" onClick={() => put([])}>
            Take all {shown.length} away
          </button>
        </div>
      ) : null}
      {shown.map((_, place) =>
        place < from || place >= from + PAGE ? null : (
          // Items have no identity of their own before they are saved: the place is what the person sees.
          // biome-ignore lint/suspicious/noArrayIndexKey: see above
          <fieldset key={`${generation}-${place}`} className={isPlain ? 'field' : 'group'}>
            {isPlain ? null : (
              <legend>
                {each} {place + 1}
              </legend>
            )}
            {of.map((inner) => (
              <Fragment key={inner.name}>
                {draw(isPlain ? { ...inner, label: `${each} ${place + 1}` } : inner, `${path}.${place}`)}
              </Fragment>
            ))}
            {shown.length > atLeast ? (
              <button
                type="button"
                className="button plain"
                aria-label={`Take away: ${each} ${place + 1}`}
                onClick={() => put(entries().filter((__, other) => other !== place))}
              >
                Take away
              </button>
            ) : null}
          </fieldset>
        ),
      )}
      {message ? (
        <p className="wrong" role="alert">
          At least {atLeast} is needed.
        </p>
      ) : null}
      <button
        type="button"
        className="button plain"
        onClick={() => {
          put([...entries(), blank])
          setFrom(Math.floor(shown.length / PAGE) * PAGE)
        }}
      >
        {addLabel}
      </button>
    </fieldset>
  )
}
