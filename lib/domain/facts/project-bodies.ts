import * as z from 'zod'
import { Plan } from '../plan'
import { Reason, Remark, Text } from '../records/common'
import { ROLES } from '../roles'
import { Specification } from '../specification'
import { CalendarDay, Moment } from '../time'
import { PublicKeyBase64 } from './device-proof'
import { FactId, PersonId, Sha256, StreamId } from './fact'
import { HashBase64 } from './key-bodies'

const Revision = z.int().min(0).max(999)

/** Bodies of the facts of a specification's stream. A draft may be changed; an issued revision never. */
export const SPECIFICATION_BODIES = {
  'specification-draft-saved': z.lazy(() => z.strictObject({ body: Specification })),
  'specification-issued': z.lazy(() =>
    z.strictObject({
      revision: Revision,
      issuedOn: CalendarDay,
      body: Specification,
      changes: Text,
      approvedBy: PersonId,
      second: PersonId.optional(),
    }),
  ),
} as const

/** Bodies of the facts of a plan's stream. */
export const PLAN_BODIES = {
  'plan-draft-saved': z.lazy(() => z.strictObject({ body: Plan })),
  'plan-issued': z.lazy(() =>
    z.strictObject({
      revision: Revision,
      issuedOn: CalendarDay,
      body: Plan,
      changes: Text,
      approvedBy: PersonId,
      second: PersonId.optional(),
    }),
  ),
} as const

/** Bodies of the facts of a project's stream: parties, roles per project and date. */
export const PROJECT_BODIES = {
  'project-opened': z.lazy(() =>
    z.strictObject({
      name: Text,
      site: Text,
      utcOffset: z.string().regex(/^[+-]\d{2}:\d{2}$/),
      owner: Text,
    }),
  ),
  'party-named': z.lazy(() =>
    z.strictObject({
      party: z.enum(['owner', 'crew', 'inspection body', 'engineer', 'area authority']),
      name: Text,
    }),
  ),
  'role-granted': z.lazy(() =>
    z.strictObject({
      person: PersonId,
      role: z.enum(ROLES),
      approve: z.boolean().default(false),
      from: CalendarDay,
      to: CalendarDay.optional(),
    }),
  ),
  'role-ended': z.lazy(() => z.strictObject({ grant: FactId, on: CalendarDay, reason: Reason })),
  remark: z.lazy(() => z.strictObject({ text: Text })),
} as const

/** Bodies of the facts of a dossier's stream (one stream a repair). */
export const DOSSIER_BODIES = {
  'dossier-issued': z.lazy(() =>
    z.strictObject({
      repair: StreamId,
      revision: Revision,
      purpose: Text,
      changes: z.array(Text).max(40),
      sha256: Sha256,
      sizeBytes: z.int().positive(),
      pageCount: z.int().positive(),
      asOf: Moment,
      factCount: z.int().nonnegative(),
      template: z.string().max(40),
      rules: z.string().max(40),
      missing: z.array(z.string().max(300)).max(400),
      /** Checkpoint that the file holds: leaves and root hash. Absent in issues made before the log had checkpoints. */
      log: z.strictObject({ size: z.int().positive(), root: HashBase64 }).optional(),
    }),
  ),
  transmitted: z.lazy(() => z.strictObject({ issue: FactId, to: Text, how: Text, at: Moment })),
} as const

/** A conflict names so many facts, whatever the record held. */
export const CONFLICT_FACTS_AT_MOST = 20

/** Bodies of the facts of a device's stream. */
export const DEVICE_BODIES = {
  'device-registered': z.lazy(() => z.strictObject({ title: Text, holder: PersonId.optional() })),
  'clock-checked': z.lazy(() => z.strictObject({ offsetMs: z.int(), remark: Remark.optional() })),
  'conflict-noted': z.lazy(() =>
    z.strictObject({
      repair: StreamId,
      facts: z.array(FactId).min(1).max(CONFLICT_FACTS_AT_MOST),
      /** The decision that is in the record and in conflict with them; absent where it was not applied. */
      decision: FactId.optional(),
      remark: Remark.optional(),
    }),
  ),
  /** The key that signs on this device for the person who registered it, before the server and with the password. */
  'signing-key-taken': z.lazy(() =>
    z.strictObject({
      algorithm: z.literal('ECDSA P-256 SHA-256'),
      publicKey: PublicKeyBase64,
    }),
  ),
  /** From here on the key signs nothing: the device is lost, passed on, or its PIN was tried too often. */
  'signing-key-ended': z.lazy(() => z.strictObject({ key: FactId, reason: Reason })),
} as const
