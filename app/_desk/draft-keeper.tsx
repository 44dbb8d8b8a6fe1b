'use client'
import { useEffect } from 'react'
import type { FieldValues, UseFormReturn } from 'react-hook-form'
import { useDraft } from '@/app/_capture/use-draft'

/** Keeps a long desk form on this device while it is keyed; dropped once its fact is kept. No password ever passes through it. */
export function DraftKeeper({
  form,
  draftKey,
  keptCount,
}: {
  form: UseFormReturn<FieldValues>
  draftKey: string
  keptCount: number
}) {
  const { restoredAt, isRefused, restart } = useDraft(form, `underwrap-draft:desk|${draftKey}`)
  useEffect(() => {
    if (keptCount > 0) restart({})
  }, [keptCount, restart])
  return (
    <>
      {restoredAt ? (
        <div className="note">
          <strong>Your draft is back.</strong>
          <button type="button" className="button plain" onClick={() => restart({})}>
            Start afresh
          </button>
        </div>
      ) : null}
      {isRefused ? (
        <p className="note refused" role="alert">
          <strong>This device refuses to keep drafts.</strong> What you key is lost if the page closes.
        </p>
      ) : null}
    </>
  )
}
