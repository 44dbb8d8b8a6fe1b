import { decideImpactAction } from '@/app/(work)/actions/repair-actions'
import { ActForm } from './act-form'

/** The decision for one repair after an impact search. It takes its attempts out of question, or says what follows. */
export function ImpactForm({
  stream,
  cause,
  points,
}: {
  stream: string
  cause: string
  points: readonly { point: string; attempt: number }[]
}) {
  return (
    <ActForm
      action={decideImpactAction}
      kind="impact-decided"
      stream={stream}
      settled={{ cause, points: [...points], evidence: [] }}
      submit="Record the decision"
      done="Recorded for this repair."
      fields={[
        {
          kind: 'choice',
          name: 'decision',
          label: 'Decision',
          options: ['no effect', 're-measured', 'recomputed, stands', 'rework', 'nonconformance raised'],
        },
        {
          kind: 'remark',
          name: 'reason',
          label: 'On what it stands',
          hint: 'Evidence by name: readings, date, instrument, report',
        },
      ]}
    />
  )
}
