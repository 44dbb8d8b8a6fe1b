'use client'
import { useCallback, useEffect, useRef, useState } from 'react'
import type { FieldValues, UseFormReturn } from 'react-hook-form'
import { dropDraft, keepDraft, loadDraft } from '@/lib/capture/draft-store'

/**
 * Keeps a form's values on this device at every change and brings them back. The draft is dropped only when its fact is on the server, or by a
 * person's own act. When the device refuses storage, `isRefused` says so at once.
 */
export function useDraft(form: UseFormReturn<FieldValues>, key: string) {
  const [restoredAt, setRestoredAt] = useState<number | null>(null)
  const [isRefused, setRefused] = useState(false)
  const isDropped = useRef(false)
  useEffect(() => {
    const draft = loadDraft(localStorage, key)
    if (draft && draft.values !== null && typeof draft.values === 'object') {
      form.reset(draft.values as FieldValues)
      setRestoredAt(draft.savedAt)
    }
    const watching = form.watch((values) => {
      if (!isDropped.current) setRefused(!keepDraft(localStorage, key, values, Date.now()))
    })
    return () => watching.unsubscribe()
  }, [form, key])
  const drop = useCallback(() => {
    isDropped.current = true
    dropDraft(localStorage, key)
    setRestoredAt(null)
  }, [key])
  const restart = useCallback(
    (blank: FieldValues) => {
      dropDraft(localStorage, key)
      setRestoredAt(null)
      form.reset(blank)
    },
    [form, key],
  )
  return { restoredAt, isRefused, drop, restart }
}
