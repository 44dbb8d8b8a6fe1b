import * as z from 'zod'
import { Decimal } from '../decimal'
import { MATERIAL_ROLES } from '../material-roles'
import { Measured, Reading, Unit } from '../reading'
import { BatchRef, Reason, Remark, Text } from '../records/common'
import { CalendarDay, Moment } from '../time'
import { FactId, Sha256, StreamId } from './fact'

/** Bodies of the facts of a batch's stream. Quantities are in the batch's own unit. */
export const BATCH_BODIES = {
  'batch-received': z.lazy(() =>
    z.strictObject({
      number: Text,
      role: z.enum(MATERIAL_ROLES),
      product: Text,
      gtin: z
        .string()
        .regex(/^\d{14}$/)
        .optional(),
      madeOn: CalendarDay.optional(),
      expiresOn: CalendarDay.nullable(),
      expiryAsLabelled: Text.optional(),
      openedLifeDays: z.int().positive().optional(),
      quantity: Measured.nullable(),
      certificate: Text.optional(),
      certificateFile: Sha256.optional(),
      storageMin: Measured.optional(),
      storageMax: Measured.optional(),
      label: z.string().max(200).optional(),
      /** How the label's text came in, where it did not come from a keyboard-like scanner. */
      labelBy: z.enum(['camera', 'image file', 'keyed']).optional(),
      /** Thickness of one cured ply, band or tape width and roll length where the product has them. */
      plyThickness: Measured.optional(),
      width: Measured.optional(),
      rollLength: Measured.optional(),
    }),
  ),
  'batch-opened': z.lazy(() => z.strictObject({ openedAt: Moment })),
  'batch-issued': z.lazy(() => z.strictObject({ quantity: Measured, to: StreamId })),
  'batch-returned': z.lazy(() => z.strictObject({ quantity: Measured, from: StreamId })),
  'batch-wasted': z.lazy(() => z.strictObject({ quantity: Measured, reason: Reason, repair: StreamId.optional() })),
  'batch-counted': z.lazy(() => z.strictObject({ quantity: Measured })),
  'batch-refused': z.lazy(() => z.strictObject({ reason: Reason, repair: StreamId.optional() })),
  'batch-quarantined': z.lazy(() => z.strictObject({ reason: Reason })),
  'quarantine-lifted': z.lazy(() => z.strictObject({ reason: Reason, second: Text })),
  'batch-recalled': z.lazy(() => z.strictObject({ reason: Reason, by: Text, reference: Text.optional() })),
  'maker-letter': z.lazy(() => z.strictObject({ letter: Text, expiresOn: CalendarDay, file: Sha256.optional() })),
  'owner-notified': z.lazy(() => z.strictObject({ cause: FactId, to: Text, how: Text, repair: StreamId.optional() })),
} as const

/** Bodies of the facts of an instrument's stream. */
export const INSTRUMENT_BODIES = {
  'instrument-registered': z.lazy(() =>
    z.strictObject({
      number: Text,
      kind: Text,
      measures: z.array(Unit).max(8),
      serial: Text.optional(),
      /** Asset number of its label, GS1 (8004), where one was given to it. */
      asset: Text.optional(),
      resolution: Decimal.optional(),
    }),
  ),
  'certificate-recorded': z.lazy(() =>
    z.strictObject({
      certificate: Text,
      calibratedOn: CalendarDay.optional(),
      dueOn: CalendarDay,
      laboratory: Text.optional(),
      range: z.strictObject({ min: Decimal, max: Decimal, unit: Unit }).optional(),
      expandedUncertainty: Measured.optional(),
      file: Sha256.optional(),
    }),
  ),
  'check-made': z.lazy(() =>
    z.strictObject({
      coverage: z.enum(['full scale', 'mid scale']),
      reference: Measured,
      read: Reading,
      tolerance: Measured,
      result: z.enum(['within', 'outside']),
    }),
  ),
  /** Found wrong: `error` is what it read too high (+) or too low (−), where it is known and justified. */
  'found-wrong': z.lazy(() =>
    z.strictObject({ error: Measured.optional(), how: Reason, lastGoodFullCheck: FactId.optional() }),
  ),
  'instrument-quarantined': z.lazy(() => z.strictObject({ reason: Reason })),
  'quarantine-lifted': z.lazy(() => z.strictObject({ reason: Reason, second: Text })),
} as const

/** Bodies of the facts of a person's stream. A person is never deleted; names may change. */
export const PERSON_BODIES = {
  'person-registered': z.lazy(() =>
    z.strictObject({
      name: Text,
      party: z.enum(['owner', 'crew', 'inspection body', 'engineer']),
      title: Text,
    }),
  ),
  'person-renamed': z.lazy(() => z.strictObject({ name: Text, reason: Reason })),
  'qualification-recorded': z.lazy(() =>
    z.strictObject({
      number: Text,
      task: z.enum(['applicator', 'supervisor', 'inspector']),
      geometries: z
        .array(z.enum(['straight', 'bend', 'tee', 'nozzle']))
        .max(4)
        .optional(),
      validFrom: CalendarDay.optional(),
      validTo: CalendarDay,
      file: Sha256.optional(),
      corrects: FactId.optional(),
      reason: Reason.optional(),
    }),
  ),
  'person-left': z.lazy(() => z.strictObject({ on: CalendarDay })),
} as const

/** Bodies of the facts of a nonconformance's stream. */
export const NONCONFORMANCE_BODIES = {
  'nonconformance-raised': z.lazy(() =>
    z.strictObject({
      number: Text,
      title: Text,
      what: Text,
      requirement: Text,
      repair: StreamId.optional(),
      point: z.string().max(4).optional(),
      attempt: z.int().optional(),
      linked: z.array(StreamId).max(40),
      evidence: z.array(FactId).max(60),
      blocks: z.array(z.string().max(4)).max(30),
      causeClass: z.enum(['method', 'material', 'person', 'instrument', 'weather', 'design', 'data', 'unknown']),
    }),
  ),
  contained: z.lazy(() => z.strictObject({ action: Text })),
  assessed: z.lazy(() => z.strictObject({ finding: Text, cause: Text.optional() })),
  'disposition-proposed': z.lazy(() =>
    z.strictObject({
      disposition: z.enum(['rework', 'repair', 'replace', 'use as is', 'return or scrap', 'no effect']),
      what: Text,
      limits: z
        .strictObject({
          lifeYears: Decimal.optional(),
          nextInspectionOn: CalendarDay.optional(),
          other: Text.optional(),
        })
        .optional(),
      conceded: z
        .array(z.strictObject({ point: z.string(), attempt: z.int() }))
        .max(20)
        .optional(),
    }),
  ),
  'disposition-approved': z.lazy(() =>
    z.strictObject({
      proposal: FactId,
      party: z.enum(['crew', 'inspector', 'client', 'engineer']),
      writing: Text.optional(),
    }),
  ),
  'disposition-rejected': z.lazy(() => z.strictObject({ proposal: FactId, reason: Reason })),
  'action-started': z.lazy(() => z.strictObject({ what: Text })),
  'action-done': z.lazy(() => z.strictObject({ what: Text })),
  verified: z.lazy(() => z.strictObject({ how: Text, evidence: z.array(FactId).max(60) })),
  closed: z.lazy(() => z.strictObject({ remark: Remark.optional() })),
  reopened: z.lazy(() => z.strictObject({ reason: Reason })),
  'not-a-nonconformance': z.lazy(() => z.strictObject({ reason: Reason })),
  'voided-duplicate': z.lazy(() => z.strictObject({ of: StreamId, reason: Reason })),
  'does-not-block': z.lazy(() => z.strictObject({ party: z.enum(['client', 'engineer']), reason: Reason })),
  'corrective-action': z.lazy(() => z.strictObject({ what: Text, owner: z.string(), dueOn: CalendarDay })),
  'corrective-action-done': z.lazy(() => z.strictObject({ action: FactId, evidence: Text })),
} as const

export { BatchRef }
