'use client'
import type { ReactNode } from 'react'
import type { FieldError, FieldErrorsImpl, Merge } from 'react-hook-form'

type AnyError = FieldError | Merge<FieldError, FieldErrorsImpl> | undefined

/** First message in an error, however deep: a reading's fault sits in one of its fields. */
export function messageOf(error: AnyError): string | null {
  if (!error) return null
  if (typeof error.message === 'string' && error.message !== '') return error.message
  for (const part of Object.values(error)) {
    if (part !== null && typeof part === 'object') {
      const inner = messageOf(part as AnyError)
      if (inner) return inner
    }
  }
  return null
}

/** Label, hint, control and what is wrong, in that order. */
export function FieldShell({
  id,
  label,
  hint,
  optional,
  error,
  wrongText,
  as = 'div',
  children,
}: {
  id: string
  label: string
  hint?: string | undefined
  optional?: boolean | undefined
  error?: AnyError
  wrongText?: string | undefined
  as?: 'div' | 'fieldset'
  children: ReactNode
}) {
  const message = messageOf(error)
  const Tag = as
  return (
    <Tag className="field">
      {as === 'fieldset' ? (
        <legend className="label">
          {label}
          {optional ? <span className="quiet"> (may stay empty)</span> : null}
        </legend>
      ) : (
        <label htmlFor={id}>
          {label}
          {optional ? <span className="quiet"> (may stay empty)</span> : null}
        </label>
      )}
      {hint ? <span className="hint">{hint}</span> : null}
      {children}
      <span id={`${id}-about`} className={message ? 'wrong' : 'visually-hidden'} role={message ? 'alert' : undefined}>
        {message ? wrongWords(message, wrongText) : ''}
      </span>
    </Tag>
  )
}

function wrongWords(message: string, text: string | undefined): string {
  if (text !== undefined && text.trim() !== '' && /expected|invalid|discriminator/i.test(message))
    return `“${text}” cannot be read as a number. Key digits with one decimal point.`
  if (/expected|invalid|required|too small|pattern/i.test(message)) return 'This is missing or not complete.'
  return message
}
