'use client'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { answerOf } from '@/app/_ui/answer-of'
import type { ShownRefusal } from '@/app/_ui/refusal-note'
import type { Result } from '@/lib/domain/result'

export type Sent = 'idle' | 'sending' | 'kept'
export type SendAnswer = Result<unknown, ShownRefusal>

/** Sends a command and keeps what it answered. A refusal or silence loses nothing that was keyed; after success the page is read anew. */
export function useSending(goTo?: string) {
  const router = useRouter()
  const [state, setState] = useState<Sent>('idle')
  const [refusal, setRefusal] = useState<ShownRefusal | null>(null)
  const send = async (ask: () => Promise<SendAnswer>): Promise<boolean> => {
    setState('sending')
    setRefusal(null)
    const answer = await answerOf(ask)
    if (answer.ok) {
      setState('kept')
      if (goTo) router.push(goTo)
      router.refresh()
      return true
    }
    setRefusal(answer.error)
    setState('idle')
    return false
  }
  return { state, refusal, send, again: () => setState('idle') }
}
