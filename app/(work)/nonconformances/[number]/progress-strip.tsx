import type { NonconformanceState } from '@/lib/domain/fold/nonconformance-state'

const STEPS = [
  'raised',
  'contained',
  'assessed',
  'disposition proposed',
  'disposition approved',
  'action in progress',
  'verified',
  'closed',
] as const
const REACHED_BY: Partial<Record<string, (typeof STEPS)[number]>> = {
  'nonconformance-raised': 'raised',
  contained: 'contained',
  assessed: 'assessed',
  'disposition-proposed': 'disposition proposed',
  'action-started': 'action in progress',
  'action-done': 'action in progress',
  verified: 'verified',
  closed: 'closed',
}

/** How far it has come along the one way every nonconformance goes; side states stand apart. */
export function ProgressStrip({ state }: { state: NonconformanceState }) {
  const reached = new Set(state.facts.flatMap((fact) => REACHED_BY[fact.kind] ?? []))
  if (state.approvals.length > 0 && state.needsApproval.length === 0) reached.add('disposition approved')
  const isSide = !STEPS.some((step) => step === state.state)
  return (
    <ol className="steps" aria-label="Progress">
      {STEPS.map((step) => (
        <li
          key={step}
          data-state={step === state.state ? 'now' : reached.has(step) ? 'past' : 'ahead'}
          aria-current={step === state.state ? 'step' : undefined}
        >
          {reached.has(step) && step !== state.state ? '✓ ' : ''}
          {step}
        </li>
      ))}
      {isSide ? (
        <li data-state="now" aria-current="step">
          {state.state}
        </li>
      ) : null}
    </ol>
  )
}
