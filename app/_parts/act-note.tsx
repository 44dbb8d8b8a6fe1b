'use client'
import { useRouter } from 'next/navigation'
import { useCallback, useState } from 'react'
import { answerOf } from '@/app/_ui/answer-of'
import type { ShownRefusal } from '@/app/_ui/refusal-note'
import type { Result } from '@/lib/domain/result'

/** Run a server action once, keep its refusal for the page, refresh on success. What was keyed stays when it is refused. */
export function useAct() {
  const router = useRouter()
  const [refusal, setRefusal] = useState<ShownRefusal | null>(null)
  const [isBusy, setBusy] = useState(false)
  const run = useCallback(
    async (act: () => Promise<Result<unknown, { code: string }>>): Promise<boolean> => {
      setBusy(true)
      setRefusal(null)
      try {
        const answer = await answerOf(act)
        if (!answer.ok) setRefusal(answer.error as ShownRefusal)
        else router.refresh()
        return answer.ok
      } finally {
        setBusy(false)
      }
    },
    [router],
  )
  return { run, refusal, isBusy }
}
