'use client'
import { useId, useState } from 'react'
import type { FieldValues, UseFormReturn } from 'react-hook-form'
import type { ScannedLabel } from '@/app/_parts/label-codes'
import { LabelScan } from '@/app/_parts/label-scan'
import { labelFault } from '@/app/_parts/label-words'
import { showGs1 } from '@/lib/calc/gs1-elements'
import { type LabelMeaning, readLabel } from '@/lib/domain/labels/read-label'
import type { DeskField } from './desk-field'
import { batchFilling, type Filling, instrumentFilling } from './label-filling'

/** The text of a label, scanned, read from a picture, pasted or keyed: fills the fields it states, and says what it filled and what it lacks. */
export function LabelField({
  form,
  spec,
}: {
  form: UseFormReturn<FieldValues>
  spec: Extract<DeskField, { kind: 'label' }>
}) {
  const id = useId()
  const [text, setText] = useState('')
  const [filled, setFilled] = useState<Filling | null>(null)
  const [fault, setFault] = useState<{ title: string; todo: string } | null>(null)
  const isBatch = spec.fills !== 'instrument'
  const put = (name: string, value: string | undefined, isChecked = false) =>
    form.setValue(name, value, { shouldDirty: true, shouldValidate: isChecked })
  const read = (next: string, by: ScannedLabel['by'] | null) => {
    setText(next)
    setFilled(null)
    setFault(null)
    const isEmpty = next.trim() === ''
    if (isBatch) {
      put(spec.name, isEmpty ? undefined : next.trim())
      put('labelBy', isEmpty ? undefined : (by ?? undefined))
    }
    if (isEmpty) return
    const meaning = readLabel(next, new Date().getFullYear())
    if (!meaning.ok) return setFault(labelFault(meaning.error))
    // The record keeps the text as it was scanned; a person reads it with brackets.
    if (by !== null && meaning.value.kind === 'gs1') setText(showGs1(meaning.value.elements))
    fill(meaning.value)
  }
  const fill = (meaning: LabelMeaning) => {
    const filling = isBatch ? batchFilling(meaning) : instrumentFilling(meaning)
    for (const [name, value] of Object.entries(filling.values)) put(name, value, true)
    setFilled(filling)
  }
  return (
    <div className="field">
      <label htmlFor={id}>
        {spec.label} <span className="quiet">(may stay empty)</span>
      </label>
      {spec.hint ? <span className="hint">{spec.hint}</span> : null}
      <div className="scan-row">
        <input
          id={id}
          value={text}
          autoComplete="off"
          spellCheck={false}
          onChange={(event) => read(event.target.value, null)}
          aria-describedby={`${id}-said`}
          aria-invalid={fault !== null}
        />
        <LabelScan
          take={(scanned) => read(scanned.text, scanned.by)}
          about={`Scan the label of the ${isBatch ? 'batch' : 'instrument'}`}
        />
      </div>
      <div id={`${id}-said`} aria-live="polite" className="stack tight">
        {fault ? (
          <p className="note refused">
            <strong>{fault.title}</strong>
            <span>{fault.todo} Nothing was filled.</span>
          </p>
        ) : null}
        {filled && filled.words.length > 0 ? (
          <p className="note good">
            <strong>Filled from the label:</strong> <span>{filled.words.join(' · ')}</span>
          </p>
        ) : null}
        {filled?.remark ? <p className="note warn">{filled.remark}</p> : null}
        {filled && filled.missing.length > 0 ? (
          <p className="note warn">
            The label lacks {filled.missing.join(' and ')}: complete by hand. The record is marked “completed by hand”.
          </p>
        ) : null}
      </div>
    </div>
  )
}
