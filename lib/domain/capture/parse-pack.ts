import type { z } from 'zod'
import { type Fact, type FactFault, parseFact } from '../facts/fact-kinds'
import { done, type Result, refused } from '../result'

export type PackRefusal = { code: 'pack-malformed'; at: string } | { code: 'pack-fact-refused'; faults: FactFault[] }

/** What a device takes along, by its form: its facts parsed one by one. */
export type PackOf<F extends { facts: unknown[]; stores: unknown[] }> = Omit<F, 'facts' | 'stores'> & {
  facts: Fact[]
  stores: Fact[]
}

/** Parse a pack as the server gave it. Refuses `pack-malformed`, and `pack-fact-refused` when a fact is of a kind that this app does not know: it is too old. */
export function parsePack<F extends { facts: unknown[]; stores: unknown[] }>(
  form: z.ZodType<F>,
  json: unknown,
): Result<PackOf<F>, PackRefusal> {
  const parsed = form.safeParse(json)
  if (!parsed.success)
    return refused({ code: 'pack-malformed', at: parsed.error.issues[0]?.path.map(String).join('.') ?? '' })
  const lists: { facts: Fact[]; stores: Fact[] } = { facts: [], stores: [] }
  for (const name of ['facts', 'stores'] as const)
    for (const one of parsed.data[name]) {
      const fact = parseFact(one)
      if (!fact.ok) return refused({ code: 'pack-fact-refused', faults: fact.error.faults })
      lists[name].push(fact.value)
    }
  return done({ ...parsed.data, ...lists })
}
