import { revalidatePath } from 'next/cache'
import { type Result, refused } from '@/lib/domain/result'
import { currentActor } from '@/lib/server/auth/current-actor'
import type { Command } from '@/lib/server/commands/command'
import type { Refusal } from '@/lib/server/commands/refusal'

/** Run a command for whoever is signed in, and show every page anew once it did something. The command authorises; this does not. Refuses `not-signed-in`. */
export async function act<V>(command: Command<V>, input: unknown): Promise<Result<V, Refusal>> {
  const actor = await currentActor()
  if (!actor) return refused({ code: 'not-signed-in' })
  const outcome = await command(actor, input)
  if (outcome.ok) revalidatePath('/', 'layout')
  return outcome
}
