import { parseDecimal } from '../decimal'
import { yieldOf } from '../judge/yield-of'
import { Unit } from '../reading'
import { ofKind } from './order-facts'
import type { RepairGround } from './repair-ground'
import type { Use } from './repair-state'

/** Every use of a batch, instrument or person: of all records of all attempts, failed, superseded and overruled ones included. */
export function usesOf(ground: RepairGround): Use[] {
  const recorded = ground.records.flatMap((one) => {
    const where = { repair: ground.stream, point: one.point, attempt: one.attempt, fact: one.fact.id }
    return yieldOf(one.record, one.fact.observedAt, one.fact.observedBy).uses.map(
      ({ of, role, at, into, amount }): Use => ({
        ...where,
        of,
        role,
        at,
        ...(into !== undefined && { into }),
        ...(amount && { amount }),
        ...(one.overruledBy !== null && { overruled: true as const }),
      }),
    )
  })
  const told = ofKind(ground.own, 'material-used').map((fact): Use => {
    const amount = amountOf(fact.body.amount)
    return {
      repair: ground.stream,
      point: fact.body.point,
      attempt: fact.body.attempt,
      fact: fact.id,
      at: fact.observedAt,
      of: fact.body.batch,
      role: 'used',
      ...(amount && { amount }),
    }
  })
  return [...recorded, ...told]
}

/** An amount such as `2 kits` or `0.140 kg`; other text states no amount that can be counted. */
function amountOf(text: string): Use['amount'] | null {
  const [number = '', unit = '', ...rest] = text.trim().split(/\s+/)
  const value = parseDecimal(number)
  const known = Unit.safeParse(unit)
  return value && known.success && rest.length === 0 ? { ...value, unit: known.data } : null
}
