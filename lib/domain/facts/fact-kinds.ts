import type { z } from 'zod'
import { done, type Result, refused } from '../result'
import { FactEnvelope, type StreamKind, streamKind } from './fact'
import { KEY_BODIES } from './key-bodies'
import { DEVICE_BODIES, DOSSIER_BODIES, PLAN_BODIES, PROJECT_BODIES, SPECIFICATION_BODIES } from './project-bodies'
import { REGISTER_BODIES } from './register-bodies'
import { REPAIR_BODIES } from './repair-bodies'
import { BATCH_BODIES, INSTRUMENT_BODIES, NONCONFORMANCE_BODIES, PERSON_BODIES } from './store-bodies'

/** Fact bodies by stream kind, then by fact kind. */
export const BODIES = {
  repair: REPAIR_BODIES,
  batch: BATCH_BODIES,
  instrument: INSTRUMENT_BODIES,
  person: PERSON_BODIES,
  nonconformance: NONCONFORMANCE_BODIES,
  specification: SPECIFICATION_BODIES,
  plan: PLAN_BODIES,
  project: PROJECT_BODIES,
  dossier: DOSSIER_BODIES,
  device: DEVICE_BODIES,
  register: REGISTER_BODIES,
  key: KEY_BODIES,
} as const satisfies Record<StreamKind, Record<string, z.ZodType>>

type Bodies = typeof BODIES
type AllBodies = {
  [S in StreamKind]: {
    [K in keyof Bodies[S]]: { streamKind: S; kind: K; body: Bodies[S][K] extends z.ZodType<infer B> ? B : never }
  }[keyof Bodies[S]]
}[StreamKind]

type Envelope = Omit<z.infer<typeof FactEnvelope>, 'kind' | 'body'>
/** A fact of any kind; `kind` tells its body. `quarantine-lifted` has one body in two streams. */
export type Fact = AllBodies extends infer One
  ? One extends { kind: infer K; body: infer B }
    ? Envelope & { kind: K; body: B }
    : never
  : never
export type FactKind = Fact['kind']
/** The fact of one kind. */
export type FactOf<K extends FactKind> = Extract<Fact, { kind: K }>
/** The body of one kind. */
export type BodyOf<K extends FactKind> = FactOf<K>['body']

export type FactFault =
  | { code: 'fact-malformed'; at: string; problem: string }
  | { code: 'kind-unknown'; stream: string; kind: string }

/**
 * Parse a fact from JSON: the envelope, then the body by stream and kind. Every problem is listed.
 * Refuses with `kind-unknown` or `fact-malformed` (one entry per bad field).
 */
export function parseFact(json: unknown): Result<Fact, { code: 'fact-refused'; faults: [FactFault, ...FactFault[]] }> {
  const envelope = FactEnvelope.safeParse(json)
  if (!envelope.success) return refused({ code: 'fact-refused', faults: faultsOf(envelope.error, []) })
  const kinds: Record<string, z.ZodType | undefined> = BODIES[streamKind(envelope.data.stream)]
  const schema = Object.hasOwn(kinds, envelope.data.kind) ? kinds[envelope.data.kind] : undefined
  if (!schema)
    return refused({
      code: 'fact-refused',
      faults: [{ code: 'kind-unknown', stream: envelope.data.stream, kind: envelope.data.kind }],
    })
  const body = schema.safeParse(envelope.data.body)
  if (!body.success) return refused({ code: 'fact-refused', faults: faultsOf(body.error, ['body']) })
  return done({ ...envelope.data, body: body.data } as Fact)
}

function faultsOf(error: z.ZodError, under: string[]): [FactFault, ...FactFault[]] {
  const faults = error.issues.map(
    (issue): FactFault => ({
      code: 'fact-malformed',
      at: [...under, ...issue.path.map(String)].join('.'),
      problem: issue.message,
    }),
  )
  const [first, ...rest] = faults
  return first ? [first, ...rest] : [{ code: 'fact-malformed', at: under.join('.'), problem: error.message }]
}
