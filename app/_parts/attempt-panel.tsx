'use client'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { openAttemptAction } from '@/app/(work)/actions/point-actions'
import { useAct } from './act-note'
import { AttemptFields, type AttemptGround } from './attempt-fields'

/** Open a new attempt before the server. */
export function AttemptPanel({ stream, ground }: { stream: string; ground: AttemptGround }) {
  const { run, refusal, isBusy } = useAct()
  return (
    <AttemptFields ground={ground} isBusy={isBusy} open={(body) => void run(() => openAttemptAction({ stream, body }))}>
      {refusal ? <RefusalNote refusal={refusal} /> : null}
    </AttemptFields>
  )
}
