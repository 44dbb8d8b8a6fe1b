import type { BodyOf, FactKind, FactOf } from '@/lib/domain/facts/fact-kinds'
import { foldNonconformance } from '@/lib/domain/fold/fold-nonconformance'
import { mayMoveNonconformance, type NonconformanceAct } from '@/lib/domain/fold/may-move-nonconformance'
import { decidingActor } from './decision-ground'
import type { Desk } from './desk'
import { factCommand, type Subject } from './fact-command'
import type { Refusal } from './refusal'
import { refusalOf } from './refusal-of'

type Kind = NonconformanceAct['kind']

/**
 * A command that takes a nonconformance on by one fact; who may and from which state is `mayMoveNonconformance`. Refuses `not-found` for a proposal that is
 * not the latest, `second-person-missing` to a doer who would verify or close, `not-decided` with the domain's code, and as every fact command.
 */
export function nonconformanceAct<K extends Kind & FactKind>(
  kind: K,
  actOf: (body: BodyOf<K>) => NonconformanceAct,
  also?: (desk: Desk, subject: Subject, fact: FactOf<K>) => Promise<Refusal | null>,
) {
  return factCommand({
    kind,
    on: 'nonconformance',
    act: 'take a nonconformance on',
    check: async (desk, subject, fact) => {
      const state = foldNonconformance(subject.facts, subject.stream, desk.now(subject.place.offset))
      if (!state) return { code: 'not-found' }
      const allowed = mayMoveNonconformance(
        state,
        actOf((fact as unknown as { body: BodyOf<K> }).body),
        decidingActor(desk, subject.place),
      )
      if (allowed.ok) return also ? also(desk, subject, fact) : null
      switch (allowed.error.code) {
        case 'proposal-stale':
          return { code: 'not-found' }
        case 'doer-does-not-verify':
        case 'second-inspector-needed':
          return { code: 'second-person-missing' }
        default:
          return refusalOf('take a nonconformance on', allowed.error)
      }
    },
  })
}
