import { z } from 'zod'
import { FactId, PersonId, Sha256, StreamId } from '../facts/fact'
import { type Fact, parseFact } from '../facts/fact-kinds'
import { REGISTER_BODIES } from '../facts/register-bodies'
import { done, type Result, refused } from '../result'
import { ROLES } from '../roles'
import { Moment } from '../time'
import type { SitePackRefusal } from './site-pack'

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
export type ProjectPack = Omit<z.infer<typeof ProjectPackForm>, 'facts' | 'stores'> & { facts: Fact[]; stores: Fact[] }

/** Parse a pack as the server gave it. Refuses `pack-malformed`, and `pack-fact-refused` for a fact of a kind that this app does not know. */
export function parseProjectPack(json: unknown): Result<ProjectPack, SitePackRefusal> {
  const form = ProjectPackForm.safeParse(json)
  if (!form.success)
    return refused({ code: 'pack-malformed', at: form.error.issues[0]?.path.map(String).join('.') ?? '' })
  const lists: { facts: Fact[]; stores: Fact[] } = { facts: [], stores: [] }
  for (const name of ['facts', 'stores'] as const)
    for (const one of form.data[name]) {
      const fact = parseFact(one)
      if (!fact.ok) return refused({ code: 'pack-fact-refused', faults: fact.error.faults })
      lists[name].push(fact.value)
    }
  return done({ ...form.data, ...lists })
}
