'use client'
import { useId, useState } from 'react'
import type { FieldValues, UseFormReturn } from 'react-hook-form'
import { parseGs1 } from '@/lib/calc/gs1-elements'
import { isRefused } from '@/lib/calc/refusal'
import type { DeskField } from './desk-field'

type Filled = { words: string[]; missing: string[] }
const FAULTS: Record<string, string> = {
  check_digit: 'The check digit of the article number does not fit: read the label again.',
  unknown_ai: 'It holds an identifier that is not known here, or it is not a GS1 text.',
  conflicting_ai: 'It states the same thing twice, differently.',
  expiry_before_production: 'It expires before it was made.',
}

/** The text of a GS1 label, scanned or pasted: fills number, article number and dates, and says what it filled. Without one, all is typed. */
export function LabelField({ form, spec }: { form: UseFormReturn<FieldValues>; spec: DeskField }) {
  const id = useId()
  const [text, setText] = useState('')
  const [filled, setFilled] = useState<Filled | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const read = (next: string) => {
    setText(next)
    setFilled(null)
    setFault(null)
    form.setValue(spec.name, next.trim() === '' ? undefined : next.trim(), { shouldDirty: true })
    if (next.trim() === '') return
    const answer = parseGs1({ text: next.trim(), referenceYear: new Date().getFullYear() })
    if (isRefused(answer))
      return setFault(FAULTS[answer.refused] ?? `It cannot be read: ${answer.refused.replaceAll('_', ' ')}.`)
    const { elements, expiry, production } = answer
    const put = (name: string, value: string | undefined, words: string): string[] => {
      if (value === undefined) return []
      form.setValue(name, value, { shouldValidate: true, shouldDirty: true })
      return [`${words} ${value}`]
    }
    const words = [
      ...put('number', elements['10'], 'batch'),
      ...put('gtin', elements['01'], 'article'),
      ...put('expiresOn', expiry?.date, 'use by'),
      ...put('madeOn', production?.date, 'made'),
    ]
    if (expiry && !expiry.isDayGiven)
      words.push(`the label states the month only: it counts to its last day, ${expiry.date}`)
    if (elements['17']) put('expiryAsLabelled', `17 = ${elements['17']}`, '')
    setFilled({
      words,
      missing: [elements['10'] ? null : 'the batch number', expiry ? null : 'the use-by day'].filter(
        (one) => one !== null,
      ),
    })
  }
  return (
    <div className="field">
      <label htmlFor={id}>
        {spec.label} <span className="quiet">(may stay empty)</span>
      </label>
      {spec.hint ? <span className="hint">{spec.hint}</span> : null}
      <input
        id={id}
        value={text}
        autoComplete="off"
        spellCheck={false}
        onChange={(event) => read(event.target.value)}
        aria-describedby={`${id}-said`}
        aria-invalid={fault !== null}
      />
      <div id={`${id}-said`} aria-live="polite">
        {fault ? <span className="wrong">{fault} Nothing was filled; type what the label says.</span> : null}
        {filled ? (
          <span className="note good">
            <strong>Filled from the label:</strong> <span>{filled.words.join(' · ') || 'nothing'}</span>
          </span>
        ) : null}
        {filled && filled.missing.length > 0 ? (
          <span className="note warn">
            The label lacks {filled.missing.join(' and ')}: complete by hand. The entry is marked “scanned, completed by
            hand”.
          </span>
        ) : null}
      </div>
    </div>
  )
}
