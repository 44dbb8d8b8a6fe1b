'use client'
import { type ReactNode, useActionState } from 'react'
import type { DoorState } from './door-state'
import { sentenceOf } from './door-state'

type Field = { name: string; label: string; type?: 'text' | 'email' | 'password'; hint?: string; autoComplete?: string }
type Props = {
  action: (state: DoorState, form: FormData) => Promise<DoorState>
  fields: readonly Field[]
  hidden?: Record<string, string>
  submit: string
  children?: ReactNode
}

/** A form at the door: its fields, what is wrong with each in words, and one button. What was typed stays, passwords aside. */
export function DoorForm({ action, fields, hidden = {}, submit, children }: Props) {
  const [state, send, isSending] = useActionState(action, { error: null, values: {} })
  const wrong = state.error?.code === 'invalid' ? state.error.fields : {}
  return (
    <form action={send} className="sheet form" noValidate>
      {children}
      {state.error && (
        <div className="note refused" role="alert">
          {sentenceOf(state.error)}
        </div>
      )}
      {Object.entries(hidden).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      {fields.map(({ name, label, type = 'text', hint, autoComplete }) => (
        <div className="field" key={name}>
          <label htmlFor={name}>{label}</label>
          {hint && (
            <p className="hint" id={`${name}-hint`}>
              {hint}
            </p>
          )}
          <input
            id={name}
            name={name}
            type={type}
            autoComplete={autoComplete ?? 'off'}
            autoCapitalize="none"
            spellCheck={false}
            defaultValue={type === 'password' ? '' : (state.values[name] ?? '')}
            aria-invalid={wrong[name] ? true : undefined}
            aria-describedby={
              [hint && `${name}-hint`, wrong[name] && `${name}-wrong`].filter(Boolean).join(' ') || undefined
            }
          />
          {wrong[name] && (
            <p className="wrong" id={`${name}-wrong`}>
              {sentence(wrong[name])}
            </p>
          )}
        </div>
      ))}
      <button type="submit" className="button" disabled={isSending}>
        {isSending ? 'One moment …' : submit}
      </button>
    </form>
  )
}

function sentence(problems: readonly string[]): string {
  return problems.map((problem) => `${problem.charAt(0).toUpperCase()}${problem.slice(1)}.`).join(' ')
}
