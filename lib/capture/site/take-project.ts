import * as z from 'zod'
import { type ProjectPack, parseProjectPack } from '@/lib/domain/capture/project-pack'
import { NumberPrefix, REGISTER_BODIES } from '@/lib/domain/facts/register-bodies'
import type { NumberBlock } from '@/lib/domain/numbers/number-blocks'
import { done, type Result, refused } from '@/lib/domain/result'
import { askServer, refusalIn } from './ask-server'
import type { SiteOwner, SiteStore } from './site-store'
import { type TakeRefusal, takeAlong } from './take-pack'

const Grounds = z.object({
  value: z.object({
    projects: z.array(z.object({ project: z.string(), title: z.string(), left: z.int() })),
    prefixes: z.array(z.object({ prefix: NumberPrefix, digits: z.int() })),
  }),
})
export type NumberGroundsHere = z.infer<typeof Grounds>['value']
const Allotted = z.object({ value: REGISTER_BODIES['numbers-allotted'] })

/** Projects for which this device may take numbers along, with what it has left. Refuses what the server refuses, and `no-answer`. */
export async function askNumberGrounds(
  device: string,
  send?: typeof fetch,
): Promise<Result<NumberGroundsHere, TakeRefusal>> {
  const json = await askServer(`/api/numbers?device=${encodeURIComponent(device)}`, {}, send)
  return answered(json, Grounds)
}

/** Have the next block of numbers allotted to this device; asked again with the same `id` it is the same block. Refuses what the server refuses, and `no-answer`. */
export async function askForNumbers(
  ask: { id: string; device: string; project: string; prefix: string; digits: number; count: number },
  send?: typeof fetch,
): Promise<Result<NumberBlock, TakeRefusal>> {
  const init = { method: 'POST', body: JSON.stringify(ask), headers: { 'content-type': 'application/json' } }
  return answered(await askServer('/api/numbers', init, send), Allotted)
}

/** Take a project along, or anew, with this device's numbers in it. Refuses as `takeAlong`. */
export function takeProject(
  store: SiteStore,
  owner: Pick<SiteOwner, 'tenant' | 'person'>,
  { project, device }: { project: string; device: string },
  send?: typeof fetch,
): Promise<Result<ProjectPack, TakeRefusal>> {
  const name = encodeURIComponent(project.slice('project:'.length))
  const ask = () => askServer(`/api/numbers/${name}?device=${encodeURIComponent(device)}`, {}, send)
  return takeAlong(ask, owner, parseProjectPack, (pack) => store.keepProject(pack))
}

function answered<T>(json: unknown, form: z.ZodType<{ value: T }>): Result<T, TakeRefusal> {
  if (json === null) return refused({ code: 'no-answer' })
  const refusal = refusalIn(json)
  if (refusal) return refused(refusal)
  const value = form.safeParse(json)
  return value.success ? done(value.data.value) : refused({ code: 'pack-malformed' })
}
