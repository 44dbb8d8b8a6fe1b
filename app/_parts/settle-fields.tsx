'use client'
import { type ReactNode, useState } from 'react'
import { Choice } from '@/app/_ui/choice'
import type { FactId } from '@/lib/domain/facts/fact'
import type { BodyOf } from '@/lib/domain/facts/fact-kinds'
import { ReasonField } from './reason-field'
import { RULING_WORDS } from './ruling-words'

type Settled = BodyOf<'conflict-settled'>
const RULINGS = (['decision stands', 'decision falls'] as const).map((value) => ({ value, label: RULING_WORDS[value] }))

/** The ruling on a conflict that a sync noted, with the reason: a decision stands or falls; where none was applied there is nothing to choose. */
export function SettleFields({
  conflict,
  isApplied,
  isBusy,
  settle,
  children,
}: {
  conflict: FactId
  isApplied: boolean
  isBusy: boolean
  settle(body: Settled): void
  /** What became of it, such as a refusal. */
  children?: ReactNode
}) {
  const [chosen, setChosen] = useState<Settled['ruling'] | ''>(isApplied ? '' : 'seen')
  const [reason, setReason] = useState('')
  return (
    <div className="stack tight">
      {isApplied ? <Choice legend="Ruling" options={RULINGS} value={chosen} change={setChosen} /> : null}
      <ReasonField label="Reason" value={reason} change={setReason} />
      {children}
      <button
        type="button"
        className="button"
        disabled={isBusy || chosen === '' || reason.trim().length < 3}
        onClick={() => (chosen === '' ? undefined : settle({ conflict, ruling: chosen, reason: reason.trim() }))}
      >
        {isApplied ? 'Rule on it' : RULING_WORDS.seen}
      </button>
    </div>
  )
}
