import * as z from 'zod'
import { MEANINGS, PARTICIPATION, ROLES } from './roles'
import { PointNo, RecordTypeName } from './specification'

const Code = z.enum(PARTICIPATION).nullable()

/** One point of the inspection and test plan. */
export const PlanPoint = z.lazy(() =>
  z.strictObject({
    no: PointNo,
    title: z.string().min(3).max(80),
    /** Record types that its form offers; `required` must be there before the point can be submitted. */
    records: z.array(z.strictObject({ type: RecordTypeName, atLeast: z.int().min(0).max(40) })).max(12),
    participation: z.strictObject({ crew: Code, inspector: Code, client: Code, engineer: Code }),
    /** Signatures demanded over the records before release. */
    signatures: z.array(z.strictObject({ meaning: z.enum(MEANINGS), role: z.enum(ROLES) })).max(6),
    /** Points that stay closed until this one is released and still valid. */
    blocks: z.array(PointNo).max(30),
    photos: z
      .array(
        z.strictObject({
          id: z.string().regex(/^[a-z0-9-]{2,40}$/),
          show: z.string().min(3).max(160),
          atLeast: z.int().min(1).max(20),
        }),
      )
      .max(10),
    /** A small crew may release its own work at this point: visible in the dossier. */
    selfRelease: z.boolean().default(false),
    hazards: z.array(z.string().max(240)).max(6).default([]),
  }),
)
export type PlanPoint = z.infer<typeof PlanPoint>

/** Events that make earlier releases fall: which points, and what must be redone. */
export const INVALIDATING_EVENTS = [
  'wet',
  'prep-lapsed',
  'weep',
  'touched',
  'pressure-raised',
  'working-time-exceeded',
  'cure-interrupted',
  'damage',
  'stopped',
] as const
export type InvalidatingEvent = (typeof INVALIDATING_EVENTS)[number]

/** Each event in words, as plans and histories show it. */
export const EVENT_TEXT: Record<InvalidatingEvent, string> = {
  wet: 'Surface wet or dew margin lost',
  'prep-lapsed': 'Preparation window lapsed',
  weep: 'Weep',
  touched: 'Surface touched',
  'pressure-raised': 'Pressure raised over the stated value',
  'working-time-exceeded': 'Working time exceeded',
  'cure-interrupted': 'Cure interrupted',
  damage: 'Damage',
  stopped: 'Work stopped',
}

/** The body of one inspection and test plan revision. */
export const Plan = z.lazy(() =>
  z.strictObject({
    number: z.string().min(2).max(40),
    title: z.string().min(3).max(160),
    points: z
      .array(PlanPoint)
      .min(1)
      .max(60)
      .refine((list) => new Set(list.map((one) => one.no)).size === list.length, 'a point number appears twice'),
    invalidations: z
      .array(z.strictObject({ event: z.enum(INVALIDATING_EVENTS), falls: z.array(PointNo), redo: z.string().max(240) }))
      .max(20),
  }),
)
export type Plan = z.infer<typeof Plan>

/**
 * The points of a cycle of blocks, in order, or null when there is none. Issuing a plan revision refuses a cycle.
 */
export function cycleOfBlocks(plan: Pick<Plan, 'points'>): PointNo[] | null {
  const blocks = new Map(plan.points.map((point) => [point.no, point.blocks]))
  const done = new Set<PointNo>()
  const walk = (no: PointNo, path: PointNo[]): PointNo[] | null => {
    const at = path.indexOf(no)
    if (at >= 0) return [...path.slice(at), no]
    if (done.has(no)) return null
    for (const next of blocks.get(no) ?? []) {
      const cycle = walk(next, [...path, no])
      if (cycle) return cycle
    }
    done.add(no)
    return null
  }
  for (const point of plan.points) {
    const cycle = walk(point.no, [])
    if (cycle) return cycle
  }
  return null
}
