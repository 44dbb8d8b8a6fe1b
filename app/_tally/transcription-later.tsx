'use client'
import { type ComponentProps, lazy, Suspense } from 'react'
import type { TranscriptionFields as Fields } from './transcription-fields'

const TranscriptionFields = lazy(async () => ({
  default: (await import('./transcription-fields')).TranscriptionFields,
}))

/** What a copy from paper states beside its record, fetched when one is made: most records are none. */
export function TranscriptionLater(props: ComponentProps<typeof Fields>) {
  return (
    <Suspense fallback={<p className="quiet">Opening what a copy from paper needs.</p>}>
      <TranscriptionFields {...props} />
    </Suspense>
  )
}
