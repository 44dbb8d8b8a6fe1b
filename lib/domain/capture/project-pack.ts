import * as z from 'zod'
import { FactId, PersonId, Sha256, StreamId } from '../facts/fact'
import { REGISTER_BODIES } from '../facts/register-bodies'
import type { Result } from '../result'
import { ROLES } from '../roles'
import { Moment } from '../time'
import { type PackOf, type PackRefusal, parsePack } from './parse-pack'

export const PROJECT_PACK_VERSION = 1

/** The pack's own fields; its facts are parsed one by one. */
const ProjectPackForm = z.strictObject({
  v: z.literal(PROJECT_PACK_VERSION),
  tenant: z.string().min(1),
  person: PersonId,
  roles: z.array(z.enum(ROLES)),
  project: StreamId,
  title: z.string(),
  takenAt: Moment,
  utcOffset: z.string(),
  clockKind: z.enum(['real', 'demo', 'test']),
  lateAfterMinutes: z.number(),
  /** Blocks of numbers of this device in the project. */
  blocks: z.array(REGISTER_BODIES['numbers-allotted']),
  /** Numbers of these blocks that a repair of the record bears. */
  taken: z.array(z.string()),
  /** Facts of the project, of every specification and plan with an issued revision. */
  facts: z.array(z.unknown()),
  /** Facts of every batch, instrument and person that a form may name. */
  stores: z.array(z.unknown()),
  digests: z.record(FactId, Sha256),
})

/** A project as a device takes it along to open repairs where there is no network. */
export type ProjectPack = PackOf<z.infer<typeof ProjectPackForm>>

/** Parse a project's pack. Refuses as `parsePack`. */
export function parseProjectPack(json: unknown): Result<ProjectPack, PackRefusal> {
  return parsePack(ProjectPackForm, json)
}
