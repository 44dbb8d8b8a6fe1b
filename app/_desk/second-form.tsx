'use client'
import { useId, useRef, useState } from 'react'
import { v7 } from 'uuid'
import { RefusalNote } from '@/app/_ui/refusal-note'
import type { Choice } from './desk-field'
import { type SendAnswer, useSending } from './use-sending'

/**
 * An act that a second person confirms at the same screen with their own password: lifting a quarantine, issuing a revision. The password is kept nowhere;
 * it is cleared after every try.
 */
export function SecondForm({
  action,
  stream,
  word,
  label,
  hint,
  submit,
  done,
  persons,
  needsSecond,
  heads,
  more,
}: {
  action: (input: unknown) => Promise<SendAnswer>
  stream: string
  word: 'reason' | 'changes'
  label: string
  hint?: string
  submit: string
  done: string
  persons: readonly Choice[]
  needsSecond: boolean
  heads: readonly { stream: string; length: number }[]
  more?: { name: 'issuedOn'; label: string; value: string }
}) {
  const id = useId()
  const factId = useRef(v7())
  const [text, setText] = useState('')
  const [extra, setExtra] = useState(more?.value ?? '')
  const [person, setPerson] = useState('')
  const [password, setPassword] = useState('')
  const { state, refusal, send } = useSending()
  const isReady = text.trim().length >= 3 && (!needsSecond || (person !== '' && password !== ''))
  const save = async () => {
    const second = needsSecond ? { second: { by: 'password', person, password } } : {}
    setPassword('')
    const isKept = await send(() =>
      action({
        stream,
        [word]: text.trim(),
        ...second,
        ...(more && extra !== '' ? { [more.name]: extra } : {}),
        id: factId.current,
        heads,
      }),
    )
    if (!isKept) return
    factId.current = v7()
    setText('')
  }
  return (
    <form
      className="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        if (isReady) void save()
      }}
    >
      <div className="field">
        <label htmlFor={`${id}-text`}>{label}</label>
        {hint ? <span className="hint">{hint}</span> : null}
        <textarea id={`${id}-text`} value={text} onChange={(event) => setText(event.target.value)} />
      </div>
      {more ? (
        <div className="field">
          <label htmlFor={`${id}-more`}>{more.label}</label>
          <input id={`${id}-more`} type="date" value={extra} onChange={(event) => setExtra(event.target.value)} />
        </div>
      ) : null}
      {needsSecond ? (
        <fieldset className="group">
          <legend>Second person</legend>
          <div className="fields">
            <div className="field">
              <label htmlFor={`${id}-who`}>Who confirms</label>
              <select id={`${id}-who`} value={person} onChange={(event) => setPerson(event.target.value)}>
                <option value="">Choose</option>
                {persons.map((one) => (
                  <option key={one.id} value={one.id}>
                    {one.label}
                  </option>
                ))}
              </select>
            </div>
            <div className="field">
              <label htmlFor={`${id}-word`}>Their password</label>
              <input
                id={`${id}-word`}
                type="password"
                autoComplete="off"
                value={password}
                onChange={(event) => setPassword(event.target.value)}
              />
            </div>
          </div>
        </fieldset>
      ) : null}
      {refusal ? <RefusalNote refusal={refusal} /> : null}
      {state === 'kept' ? (
        <p className="note good" role="status">
          <strong>{done}</strong>
        </p>
      ) : null}
      <div>
        <button type="submit" className="button" disabled={!isReady || state === 'sending'}>
          {state === 'sending' ? 'Saving' : submit}
        </button>
      </div>
    </form>
  )
}
