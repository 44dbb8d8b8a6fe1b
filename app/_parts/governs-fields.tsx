'use client'
import { type ReactNode, useState } from 'react'
import type { FactId } from '@/lib/domain/facts/fact'
import type { BodyOf } from '@/lib/domain/facts/fact-kinds'
import type { PointNo } from '@/lib/domain/specification'
import { ReasonField } from './reason-field'
import type { RecordChoice } from './record-choices'

/** Which record governs, with the reason. */
export function GovernsFields({
  point,
  attempt,
  records,
  isBusy,
  choose,
  children,
}: {
  point: PointNo
  attempt: number
  records: readonly RecordChoice[]
  isBusy: boolean
  choose: (body: BodyOf<'governs-chosen'>) => void
  /** What became of it, such as a refusal. */
  children?: ReactNode
}) {
  const [chosen, setChosen] = useState<FactId | null>(null)
  const [reason, setReason] = useState('')
  return (
    <div className="stack tight">
      <div className="choice" role="radiogroup" aria-label="Record that governs">
        {records.map((record) => (
          <label key={record.id}>
            <input
              type="radio"
              name={`governs-${records[0]?.id}`}
              checked={chosen === record.id}
              onChange={() => setChosen(record.id)}
            />
            {record.label}
          </label>
        ))}
      </div>
      <ReasonField label="Reason" value={reason} change={setReason} />
      {children}
      <button
        type="button"
        className="button"
        disabled={isBusy || chosen === null || reason.trim().length < 3}
        onClick={() =>
          chosen === null
            ? undefined
            : choose({
                point,
                attempt,
                record: chosen,
                over: records.filter((one) => one.id !== chosen).map((one) => one.id),
                reason: reason.trim(),
              })
        }
      >
        Let it govern
      </button>
    </div>
  )
}
