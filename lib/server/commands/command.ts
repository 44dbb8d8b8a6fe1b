import type { z } from 'zod'
import { type Result, refused } from '@/lib/domain/result'
import type { Actor } from '@/lib/server/auth/actor'
import type { Desk, Kept } from './desk'
import { openDesk } from './open-desk'
import type { Refusal } from './refusal'

/** A use case: parses its input, authorises by itself, decides and appends. The input comes from outside and is never trusted. */
export type Command<V = Kept> = (actor: Actor, input: unknown) => Promise<Result<V, Refusal>>

/** A command whose form is this schema. Refuses `invalid` with every bad field before anything is looked up. */
export function command<S extends z.ZodType, V>(
  schema: S,
  work: (desk: Desk, form: z.output<S>) => Promise<Result<V, Refusal>>,
): Command<V> {
  return async (actor, input) => {
    const form = schema.safeParse(input)
    if (!form.success) return refused(invalid(form.error))
    return work(await openDesk(actor), form.data)
  }
}

/** Every bad field with what is wrong with it, by path. */
export function invalid(error: z.ZodError): Extract<Refusal, { code: 'invalid' }> {
  const fields: Record<string, string[]> = {}
  for (const issue of error.issues) {
    const path = issue.path.map(String).join('.') || 'form'
    fields[path] = [...(fields[path] ?? []), issue.message]
  }
  return { code: 'invalid', fields }
}
