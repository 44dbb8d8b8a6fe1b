import type { JudgeContext } from '@/lib/domain/judge/judge-context'
import { showLimit } from '@/lib/domain/judge/show-limit'

/** The numeric limits of a point, large enough to read at arm's length. */
export function PointLimits({ judge }: { judge: Pick<JudgeContext, 'point' | 'specification' | 'design' | 'defect'> }) {
  const shown = judge.specification.body.criteria.filter(
    (one) =>
      one.point === judge.point.no &&
      ['each', 'mean', 'count', 'window', 'ratio', 'pressure-drop', 'cure-hold'].includes(one.rule.kind),
  )
  if (shown.length === 0) return null
  return (
    <div className="limits">
      {shown.map((criterion) => (
        <div key={criterion.id}>
          {criterion.title}
          <b>{showLimit(criterion, judge)}</b>
        </div>
      ))}
    </div>
  )
}
