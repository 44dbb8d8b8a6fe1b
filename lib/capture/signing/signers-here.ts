import type { SitePack } from '@/lib/domain/capture/site-pack'
import type { PersonId } from '@/lib/domain/facts/fact'
import { ofKind } from '@/lib/domain/fold/order-facts'
import type { Role } from '@/lib/domain/roles'
import type { KeptKey } from './key-ring'

export type KeyHere = Pick<KeptKey, 'person' | 'name' | 'fact' | 'triesLeft'>

/** Who may sign a repair on this device: with a key of their own, or a client without an account in person before a key's holder. */
export type SignerHere = { person: PersonId; name: string; roles: Role[]; approves: boolean; by: 'key' | 'in person' }

/** `ready` signs; `newer` was made after the repair was taken along, so that nobody could tell here that it speaks for its person; `ended` signs nothing more. */
export type KeyStanding = 'ready' | 'newer' | 'ended'

/** How a key of this device stands by what a pack knows. */
export function keyStanding(pack: SitePack, key: Pick<KeyHere, 'fact'>): KeyStanding {
  if (ofKind(pack.facts, 'signing-key-ended').some((one) => one.body.key === key.fact)) return 'ended'
  return pack.facts.some((one) => one.id === key.fact) ? 'ready' : 'newer'
}

/** Names of persons whose key of this device signs nothing of a pack, by why. */
export function idleKeys(
  pack: SitePack,
  keys: readonly Pick<KeyHere, 'fact' | 'name'>[],
): Record<Exclude<KeyStanding, 'ready'>, string[]> {
  const namesOf = (standing: KeyStanding) =>
    keys.filter((key) => keyStanding(pack, key) === standing).map((key) => key.name)
  return { newer: namesOf('newer'), ended: namesOf('ended') }
}

/** Who may sign here, by name; nobody where the pack names no signers or no key is ready. */
export function signersHere(pack: SitePack, keys: readonly KeyHere[]): SignerHere[] {
  const ready = new Set(keys.filter((key) => keyStanding(pack, key) === 'ready').map((key) => key.person))
  if (ready.size === 0) return []
  return (pack.signers ?? []).flatMap(({ person, name, roles, hasAccount, approves }): SignerHere[] => {
    const held = roles.filter((role) => role !== 'administrator' && role !== 'auditor')
    if (ready.has(person)) return [{ person, name, roles: held, approves, by: 'key' }]
    return !hasAccount && held.includes('client')
      ? [{ person, name, roles: ['client'], approves, by: 'in person' }]
      : []
  })
}
