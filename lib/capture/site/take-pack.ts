import type { PackRefusal } from '@/lib/domain/capture/parse-pack'
import { parseSitePack, type SitePack } from '@/lib/domain/capture/site-pack'
import { done, type Result, refused } from '@/lib/domain/result'
import { askServer, refusalIn } from './ask-server'
import type { KeepPackRefusal, SiteOwner, SiteStore } from './site-store'

export type TakeRefusal =
  | KeepPackRefusal
  | { code: 'no-answer' }
  | { code: 'pack-malformed' }
  | { code: 'other-person' }
  | { code: string; [fact: string]: unknown }

type Owned = Pick<SiteOwner, 'tenant' | 'person'>

/**
 * Take a repair to this device, or take it anew. Refuses as `takeAlong`.
 */
export function takePack(
  store: SiteStore,
  owner: Owned,
  number: string,
  send?: typeof fetch,
): Promise<Result<SitePack, TakeRefusal>> {
  const ask = () => askServer(`/api/site/${encodeURIComponent(number)}`, {}, send)
  return takeAlong(ask, owner, parseSitePack, (pack) => store.keepPack(pack))
}

/**
 * Ask for a pack, see that it is this person's, and keep it. Refuses what the server refuses, `no-answer`, `pack-malformed` (this app is too old for it), `other-person` when another person is signed in than
 * the one who works here, `storage-full` and `storage-refused`. Whatever is refused, an older pack stays.
 */
export async function takeAlong<P extends Owned>(
  ask: () => Promise<unknown>,
  owner: Owned,
  parse: (json: unknown) => Result<P, PackRefusal>,
  keep: (pack: P) => Promise<Result<null, KeepPackRefusal>>,
): Promise<Result<P, TakeRefusal>> {
  const json = await ask()
  if (json === null) return refused({ code: 'no-answer' })
  const refusal = refusalIn(json)
  if (refusal) return refused(refusal)
  const pack = parse(json)
  if (!pack.ok) return refused({ code: 'pack-malformed' })
  if (pack.value.tenant !== owner.tenant || pack.value.person !== owner.person) return refused({ code: 'other-person' })
  const kept = await keep(pack.value)
  return kept.ok ? done(pack.value) : kept
}
