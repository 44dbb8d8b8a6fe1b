'use client'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { withdrawReleaseAction } from '@/app/(work)/actions/point-actions'
import { useAct } from './act-note'
import { type ReleaseChoice, WithdrawFields } from './withdraw-fields'

/** Withdraw a release before the server. */
export function WithdrawPanel({ stream, releases }: { stream: string; releases: readonly ReleaseChoice[] }) {
  const { run, refusal, isBusy } = useAct()
  return (
    <WithdrawFields
      releases={releases}
      isBusy={isBusy}
      withdraw={(body) => void run(() => withdrawReleaseAction({ stream, body }))}
    >
      {refusal ? <RefusalNote refusal={refusal} /> : null}
    </WithdrawFields>
  )
}
