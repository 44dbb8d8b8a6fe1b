'use client'
import { useState } from 'react'
import { Choice } from '@/app/_ui/choice'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { settleConflictAction } from '@/app/(work)/actions/signing-actions'
import type { BodyOf } from '@/lib/domain/facts/fact-kinds'
import { useAct } from './act-note'
import { ReasonField } from './reason-field'

type Ruling = BodyOf<'conflict-settled'>['ruling']

/** The ruling about a conflict that a sync noted, with the reason. */
export function SettleForm({
  stream,
  conflict,
  rulings,
}: {
  stream: string
  conflict: string
  rulings: readonly { value: Ruling; label: string }[]
}) {
  const { run, refusal, isBusy } = useAct()
  const [chosen, setChosen] = useState<Ruling | ''>(rulings.length === 1 ? (rulings[0]?.value ?? '') : '')
  const [reason, setReason] = useState('')
  return (
    <div className="stack tight">
      {rulings.length > 1 ? <Choice legend="Ruling" options={rulings} value={chosen} change={setChosen} /> : null}
      <ReasonField label="Reason" value={reason} change={setReason} />
      {refusal ? <RefusalNote refusal={refusal} /> : null}
      <button
        type="button"
        className="button"
        disabled={isBusy || chosen === '' || reason.trim().length < 3}
        onClick={() =>
          run(() => settleConflictAction({ stream, body: { conflict, ruling: chosen, reason: reason.trim() } }))
        }
      >
        {rulings.length === 1 ? (rulings[0]?.label ?? 'Rule') : 'Rule on it'}
      </button>
    </div>
  )
}
