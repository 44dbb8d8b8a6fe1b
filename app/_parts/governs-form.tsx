'use client'
import { RefusalNote } from '@/app/_ui/refusal-note'
import type { Result } from '@/lib/domain/result'
import type { PointNo } from '@/lib/domain/specification'
import { useAct } from './act-note'
import { GovernsFields } from './governs-fields'
import type { RecordChoice } from './record-choices'

type Act = (input: unknown) => Promise<Result<unknown, { code: string }>>

/** Let one of several records govern, before the server. */
export function GovernsForm({
  stream,
  act,
  ...of
}: {
  stream: string
  point: PointNo
  attempt: number
  records: readonly RecordChoice[]
  act: Act
}) {
  const { run, refusal, isBusy } = useAct()
  return (
    <GovernsFields {...of} isBusy={isBusy} choose={(body) => void run(() => act({ stream, body }))}>
      {refusal ? <RefusalNote refusal={refusal} /> : null}
    </GovernsFields>
  )
}
