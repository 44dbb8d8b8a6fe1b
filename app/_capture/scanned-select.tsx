'use client'
import { useState } from 'react'
import type { Control, FieldValues } from 'react-hook-form'
import { useFormContext } from 'react-hook-form'
import type { ScannedLabel } from '@/app/_parts/label-codes'
import { LabelScan } from '@/app/_parts/label-scan'
import { labelFault } from '@/app/_parts/label-words'
import { findLabelled } from '@/lib/domain/labels/find-labelled'
import { knownBatch, knownInstrument } from '@/lib/domain/labels/known-things'
import { readLabel } from '@/lib/domain/labels/read-label'
import { useCapture } from './capture-context'
import { SelectField } from './simple-fields'

type Choice = { id: string; label: string; note?: string; isBarred?: boolean }
type Said = { tone: 'good' | 'warn' | 'refused'; words: string }

/** A batch or instrument chosen from the list, or by scanning its label: the label must name exactly one that may stand here. */
export function ScannedSelect({
  kind,
  options,
  ...shared
}: {
  kind: 'batch' | 'instrument'
  control: Control<FieldValues>
  path: string
  label: string
  hint?: string | undefined
  optional?: boolean | undefined
  options: readonly Choice[]
}) {
  const { judge } = useCapture()
  const { setValue } = useFormContext<FieldValues>()
  const [said, setSaid] = useState<Said | null>(null)
  const take = ({ text }: ScannedLabel) => {
    const read = readLabel(text, Number(judge.asOf.slice(0, 4)))
    if (!read.ok) {
      const { title, todo } = labelFault(read.error)
      return setSaid({ tone: 'refused', words: `${title} ${todo}` })
    }
    const { found, doubts } = findLabelled(read.value, {
      batches: kind === 'batch' ? Object.values(judge.batches).map(knownBatch) : [],
      instruments: kind === 'instrument' ? Object.values(judge.instruments).map(knownInstrument) : [],
      repairs: [],
    })
    const [only, ...others] = found
    const chosen = options.find((option) => option.id === only?.stream)
    if (only && others.length > 0)
      return setSaid({ tone: 'warn', words: `The label names ${found.length} of them: choose from the list.` })
    if (!only) return setSaid({ tone: 'refused', words: unknownWords(kind, doubts.length > 0) })
    if (!chosen)
      return setSaid({
        tone: 'refused',
        words: `The label names ${only.stream.replace(':', ' ')}, which is not what this field asks for.`,
      })
    setValue(shared.path, chosen.id, { shouldDirty: true, shouldValidate: true })
    const doubt = doubts.find((one) => one.stream === only.stream)
    setSaid(
      doubt
        ? {
            tone: 'warn',
            words: `${chosen.label}: the label says ${doubt.label}, the record ${doubt.record}. Compare the package.`,
          }
        : { tone: 'good', words: `From the label: ${chosen.label}` },
    )
  }
  return (
    <div className="stack tight">
      <SelectField {...shared} options={options} />
      <div>
        <LabelScan
          take={take}
          about={shared.label.toLowerCase() === kind ? `Scan the ${kind}` : `Scan the ${kind}: ${shared.label}`}
          label={`Scan the ${kind}`}
        />
      </div>
      <div role="status">{said === null ? null : <p className={`note ${said.tone}`}>{said.words}</p>}</div>
    </div>
  )
}

function unknownWords(kind: 'batch' | 'instrument', isOtherArticle: boolean): string {
  if (isOtherArticle)
    return 'A batch of that number is here, but it is another article. Compare the package before use.'
  return kind === 'batch'
    ? 'No batch here goes by this label. Stores receive it before anyone uses it.'
    : 'No instrument here goes by this label. Register it before it is used.'
}
