import type { Role } from '@/lib/domain/roles'
import type { Actor } from '@/lib/server/auth/actor'
import type { Command } from '@/lib/server/commands/command'
import type { Prepared } from './prepared-world'

export type Tried = Prepared & { heads(): Promise<{ stream: string; length: number }[]> }

/**
 * One action or route: what it runs, an input that someone with the right could use, and the roles that have it. Every other role, and a caller of another
 * tenant who holds every role there, must be refused.
 */
export type Row = {
  name: string
  run: Command<unknown>
  input: (world: Tried, actor: Actor) => unknown
  may: readonly Role[]
}
