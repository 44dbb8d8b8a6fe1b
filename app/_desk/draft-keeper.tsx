'use client'
import { useEffect } from 'react'
import type { FieldValues, UseFormReturn } from 'react-hook-form'
import { DraftNotes } from '@/app/_capture/draft-notes'
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
  return <DraftNotes restoredAt={restoredAt} isRefused={isRefused} restart={() => restart({})} />
}
