import type { AttemptState, PointState } from '../fold/repair-state'

/** Signatures that the plan asks for at an attempt and that do not stand there yet. */
export function signaturesAsked(
  { plan }: Pick<PointState, 'plan'>,
  { signatures }: Pick<AttemptState, 'signatures'>,
): PointState['plan']['signatures'] {
  return plan.signatures.filter(
    ({ meaning, role }) =>
      !signatures.some(
        ({ state, fact }) => state === 'stands' && fact.body.meaning === meaning && fact.body.role === role,
      ),
  )
}
