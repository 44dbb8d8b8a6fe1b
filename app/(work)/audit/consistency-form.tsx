'use client'
import { type ChangeEvent, type FormEvent, useState } from 'react'
import type { Result } from '@/lib/domain/result'
import type { ConsistencyAnswer } from '@/lib/server/commands/prove-consistency'
import type { Refusal } from '@/lib/server/commands/refusal'
import { compareCheckpoints, sizeOfCheckpoint } from './compare-checkpoints'
import { comparisonWords, logFaultWords, type Told } from './comparison-words'
import { readLog } from './read-log'

const FILE_AT_MOST_BYTES = 65_536

/** Compare a checkpoint that the reader kept with the log as it is now. The server sends head, keys and proof; everything is computed here. */
export function ConsistencyForm() {
  const [text, setText] = useState('')
  const [heldKey, setHeldKey] = useState('')
  const [told, setTold] = useState<Told | null>(null)
  const [isBusy, setIsBusy] = useState(false)
  const choose = async (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0]
    if (!file) return
    setTold(null)
    setText(file.size > FILE_AT_MOST_BYTES ? '' : await file.text())
    if (file.size > FILE_AT_MOST_BYTES) setTold(comparisonWords({ code: 'malformed', at: 'length' }))
  }
  const submit = async (event: FormEvent) => {
    event.preventDefault()
    setIsBusy(true)
    setTold(await compare(withLastBreak(text), heldKey.trim() || null))
    setIsBusy(false)
  }
  return (
    <form className="form" onSubmit={submit}>
      <div className="field">
        <label htmlFor="checkpoint">Your checkpoint</label>
        <span className="hint">Paste all its lines, from the origin to the signature, or choose the file.</span>
        <textarea
          id="checkpoint"
          className="exact-field"
          rows={6}
          value={text}
          onChange={(event) => setText(event.target.value)}
          spellCheck={false}
          autoComplete="off"
          required
        />
        <input type="file" accept=".txt,text/plain" aria-label="Checkpoint as a file" onChange={choose} />
      </div>
      <div className="field">
        <label htmlFor="held-key">The log key that you keep, if you keep one</label>
        <span className="hint">
          With it the answer does not rest on the keys that the server names: your key must vouch for them.
        </span>
        <input
          id="held-key"
          className="exact-field"
          value={heldKey}
          onChange={(event) => setHeldKey(event.target.value)}
          spellCheck={false}
          autoComplete="off"
        />
      </div>
      <div className="row">
        <button className="button" type="submit" disabled={isBusy || text.trim() === ''}>
          {isBusy ? 'Comparing' : 'Compare with the log now'}
        </button>
      </div>
      <div role="status">
        {told ? (
          <div className={`note ${told.isGood ? 'good' : 'refused'}`}>
            <strong>{told.title}</strong>
            <span>{told.text}</span>
          </div>
        ) : null}
      </div>
    </form>
  )
}

/** Copying often loses the last line break: it is put back, and nothing else is changed. */
function withLastBreak(text: string): string {
  return text === '' || text.endsWith('\n') ? text : `${text}\n`
}

async function compare(text: string, heldKey: string | null): Promise<Told> {
  const size = sizeOfCheckpoint(text)
  const answer = await ask(size ?? 1)
  if ('title' in answer) return answer
  const log = readLog(answer.log)
  return log.ok ? comparisonWords(compareCheckpoints(text, log.value, answer.proof, heldKey)) : logFaultWords(log.error)
}

async function ask(from: number): Promise<ConsistencyAnswer | Told> {
  const failed = (text: string): Told => ({ isGood: false, title: 'Nothing was compared.', text })
  try {
    const response = await fetch(`/api/audit/consistency?from=${from}`, { cache: 'no-store' })
    const outcome = (await response.json()) as Result<ConsistencyAnswer, Refusal>
    if (outcome.ok) return outcome.value
    return failed(
      outcome.error.code === 'not-decided'
        ? `The log cannot be signed now: ${outcome.error.why}`
        : `The server refused: ${outcome.error.code.replaceAll('-', ' ')}.`,
    )
  } catch {
    return failed('The server did not answer. Try again when there is a connection.')
  }
}
