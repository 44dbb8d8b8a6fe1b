'use client'
import { useCallback, useEffect, useRef, useState } from 'react'
import type { FieldValues, UseFormReturn } from 'react-hook-form'
import { dropDraft, keepDraft, loadDraft } from '@/lib/capture/draft-store'
import { afterPaint } from './after-paint'

/**
 * Keeps a form's values on this device after every change, and brings them back. They are written once the change is shown, and at once when the page is left or hidden. The draft is dropped only when its
 * fact is on the server, or by a person's own act. When the device refuses storage, `isRefused` says so.
 */
export function useDraft(form: UseFormReturn<FieldValues>, key: string) {
  const [restoredAt, setRestoredAt] = useState<number | null>(null)
  const [isRefused, setRefused] = useState(false)
  const writing = useRef<ReturnType<typeof afterPaint> | null>(null)
  const isDropped = useRef(false)
  useEffect(() => {
    const draft = loadDraft(localStorage, key)
    if (draft && draft.values !== null && typeof draft.values === 'object') {
      form.reset(draft.values as FieldValues)
      setRestoredAt(draft.savedAt)
    }
    const written = afterPaint(() => setRefused(!keepDraft(localStorage, key, form.getValues(), Date.now())))
    writing.current = written
    const watching = form.watch(() => {
      if (!isDropped.current) written.ask()
    })
    window.addEventListener('pagehide', written.now)
    document.addEventListener('visibilitychange', written.now)
    return () => {
      watching.unsubscribe()
      window.removeEventListener('pagehide', written.now)
      document.removeEventListener('visibilitychange', written.now)
      written.now()
    }
  }, [form, key])
  const drop = useCallback(() => {
    isDropped.current = true
    writing.current?.cancel()
    dropDraft(localStorage, key)
    setRestoredAt(null)
  }, [key])
  const restart = useCallback(
    (blank: FieldValues) => {
      form.reset(blank)
      writing.current?.cancel()
      dropDraft(localStorage, key)
      setRestoredAt(null)
    },
    [form, key],
  )
  return { restoredAt, isRefused, drop, restart }
}
