import { ActForm } from '@/app/_desk/act-form'
import type { DeskField } from '@/app/_desk/desk-field'
import { proposeDispositionAction } from '@/app/(work)/actions/nonconformance-actions'
import { APPROVALS_OF_DISPOSITION, type Disposition } from '@/lib/domain/fold/fold-nonconformance'
import type { NonconformanceView } from '@/lib/server/views/nonconformance-view'

const MEANS: Record<Disposition, string> = {
  rework: 'bring back to specification',
  repair: 'acceptable, not to the original specification: a concession',
  replace: 'strip and start over',
  'use as is': 'accept the departure: a concession',
  'return or scrap': 'materials and instruments',
  'no effect': 'the search shows none',
}

/** Propose a disposition, with the limits of a concession and what it concedes. */
export function ProposeForm({
  view,
  dispositions,
  shared,
}: {
  view: NonconformanceView
  dispositions: readonly Disposition[]
  shared: { stream: string; heads: { stream: string; length: number }[]; utcOffset: string }
}) {
  const failing =
    view.repair?.points.filter((point) =>
      point.attempts.some((attempt) => attempt.verdict === 'fail' && attempt.criteria.length > 0),
    ) ?? []
  const concedes = dispositions.some((one) => one === 'repair' || one === 'use as is')
  const fields: DeskField[] = [
    {
      kind: 'select',
      name: 'disposition',
      label: 'Disposition',
      options: dispositions.map((one) => ({
        id: one,
        label: one,
        note: `${MEANS[one]}; approved by ${APPROVALS_OF_DISPOSITION[one].join(' and ')}`,
      })),
    },
    { kind: 'remark', name: 'what', label: 'What shall be done' },
    ...(concedes
      ? [
          {
            kind: 'decimal' as const,
            name: 'limits.lifeYears',
            label: 'Limit of a concession: life, years',
            optional: true as const,
          },
          {
            kind: 'day' as const,
            name: 'limits.nextInspectionOn',
            label: 'Limit of a concession: next inspection',
            hint: 'Earlier, never later',
            optional: true as const,
          },
          { kind: 'text' as const, name: 'limits.other', label: 'Other limit', optional: true as const },
          {
            kind: 'list' as const,
            name: 'conceded',
            label: 'Results conceded',
            hint: 'They stay fail; the decision stands beside them',
            each: 'Result',
            addLabel: 'Add a result',
            optional: true as const,
            of: [
              {
                kind: 'select' as const,
                name: 'point',
                label: 'Point',
                options: failing.map((point) => ({ id: point.no, label: `${point.no} ${point.plan.title}` })),
              },
              { kind: 'whole' as const, name: 'attempt', label: 'Attempt' },
            ],
          },
        ]
      : []),
  ]
  return (
    <ActForm
      {...shared}
      action={proposeDispositionAction}
      kind="disposition-proposed"
      fields={fields}
      submit="Propose"
      done="Proposed."
    />
  )
}
