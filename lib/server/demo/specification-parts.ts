import type { z } from 'zod'
import { decimal } from '@/lib/domain/decimal'
import type { Unit } from '@/lib/domain/reading'
import type { Criterion, Limit, Rule, Specification } from '@/lib/domain/specification'

export type SpecificationText = z.input<typeof Specification>
export type CriterionText = z.input<typeof Criterion>
type RuleText = z.input<typeof Rule>
type LimitText = z.input<typeof Limit>

/** A limit that the specification states. */
export function limit(text: string, unit: Unit): LimitText {
  return { from: 'specification', value: decimal(text), unit }
}

/** A limit that stands on the design sheet, or on a share of its value. */
export function ofDesign(value: Extract<LimitText, { from: 'design' }>['value'], factor?: string): LimitText {
  return factor === undefined ? { from: 'design', value } : { from: 'design', value, factor: decimal(factor) }
}

/** A table of minutes against degrees, as pairs of text. */
export function timeTable(
  kind: 'step' | 'interpolated',
  ...rows: [temp: string, minutes: string][]
): Extract<RuleText, { kind: 'hardening-time' }>['table'] {
  return { kind, rows: rows.map(([temp, minutes]) => ({ temp: decimal(temp), minutes: decimal(minutes) })) }
}

/** One criterion: its id is the point with a short name, `05.salts`; the clause is the specification's own number. */
export function criterion(point: string, name: string, clause: string, title: string, rule: RuleText): CriterionText {
  return { id: `${point}.${name}`, point, clause, title, rule }
}

/** The formal criteria of one point: instruments, batches, persons, photos and order of facts, in one clause each. */
export function formal(point: string, ...kinds: (keyof typeof FORMAL)[]): CriterionText[] {
  return kinds.map((kind) => criterion(point, FORMAL[kind].name, FORMAL[kind].clause, FORMAL[kind].title, { kind }))
}

const FORMAL = {
  'instruments-valid': {
    name: 'instruments',
    clause: '4.2',
    title: 'Instruments in date on the day of use, check within tolerance',
  },
  'persons-qualified': {
    name: 'persons',
    clause: '4.3',
    title: 'Persons qualified on the day, for the task and the geometry',
  },
  'batches-valid': {
    name: 'batches',
    clause: '3.2',
    title: 'Batches in date at use, neither recalled nor quarantined',
  },
  photos: { name: 'photos', clause: '2.6', title: 'Photos as the plan demands' },
  'order-of-facts': { name: 'order', clause: '2.5', title: 'Times follow the order of the work' },
} as const
