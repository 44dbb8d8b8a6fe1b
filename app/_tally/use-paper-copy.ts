'use client'
import { useCallback, useEffect, useState } from 'react'
import { draftKey, keepDraft, loadDraft } from '@/lib/capture/draft-store'
import { EMPTY_COPY, type PaperCopy } from '@/lib/domain/tally/paper-copy'

/** A sheet that is being copied: its number where the code or the person gave it, and where it belongs. */
export type PaperSheet = {
  tenant: string
  person: string
  repair: string
  point: string
  attempt: number
  sheet: string
}

/**
 * What is keyed beside a record copied from paper, kept on this device at every change: the forms of one sheet share who observed it, the keeper, the place and the scan. Null when nothing is
 * copied from paper.
 */
export function usePaperCopy(of: PaperSheet | null) {
  const [copy, setCopy] = useState<PaperCopy>({ ...EMPTY_COPY, sheet: of?.sheet ?? '' })
  const key = of ? draftKey({ ...of, type: 'paper', of: of.sheet || 'paper' }) : null
  useEffect(() => {
    const draft = key === null ? null : loadDraft(localStorage, key)
    if (isCopy(draft?.values)) setCopy((now) => ({ ...now, ...(draft?.values as Partial<PaperCopy>) }))
  }, [key])
  const change = useCallback(
    (part: Partial<PaperCopy>) =>
      setCopy((now) => {
        const next = { ...now, ...part }
        // the time belongs to one record, all else to the sheet
        const { day: _day, clock: _clock, ...shared } = next
        if (key !== null) keepDraft(localStorage, key, shared, Date.now())
        return next
      }),
    [key],
  )
  return { copy, change }
}

function isCopy(values: unknown): boolean {
  return values !== null && typeof values === 'object' && !Array.isArray(values)
}
