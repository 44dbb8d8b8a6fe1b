'use client'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { settleConflictAction } from '@/app/(work)/actions/signing-actions'
import type { FactId } from '@/lib/domain/facts/fact'
import { useAct } from './act-note'
import { SettleFields } from './settle-fields'

/** Rule on a conflict that a sync noted, before the server. */
export function SettleForm({ stream, ...of }: { stream: string; conflict: FactId; isApplied: boolean }) {
  const { run, refusal, isBusy } = useAct()
  return (
    <SettleFields {...of} isBusy={isBusy} settle={(body) => void run(() => settleConflictAction({ stream, body }))}>
      {refusal ? <RefusalNote refusal={refusal} /> : null}
    </SettleFields>
  )
}
