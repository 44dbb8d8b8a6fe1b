import { chooseGovernsAction } from '@/app/(work)/actions/point-actions'
import type { PointView } from '@/lib/server/views/point-view'
import { GovernsForm } from './governs-form'

/** Two records that contradict each other: both stay, an inspector says which governs and why. */
export function GovernsChoice({ view }: { view: PointView }) {
  const { state, point, attempt, names } = view
  const open = state.conflicts.filter((one) => one.point === point.no && !one.resolved)
  if (open.length === 0) return null
  return (
    <>
      {open.map((conflict) => (
        <section key={conflict.facts.join()} className="note question-note">
          <strong>Two records contradict each other</strong>
          <span>{conflict.text}</span>
          {view.roles.includes('inspector') ? (
            <GovernsForm
              stream={state.stream}
              point={point.no}
              attempt={attempt.attempt}
              act={chooseGovernsAction}
              records={conflict.facts.flatMap((id) => {
                const one = attempt.records.find((each) => each.fact.id === id)
                return one
                  ? [
                      {
                        id,
                        label: `${names[one.fact.observedBy] ?? one.fact.observedBy}, device ${one.fact.device.id}`,
                      },
                    ]
                  : []
              })}
            />
          ) : (
            <span>An inspector chooses which governs.</span>
          )}
        </section>
      ))}
    </>
  )
}
