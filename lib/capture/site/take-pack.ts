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

/**
 * Take a repair to this device, or take it anew. Refuses what the server refuses, `no-answer`, `pack-malformed` (this app is too old for it), `other-person` when another person is signed in than the one who
 * works here, `storage-full` and `storage-refused`. Whatever is refused, an older pack stays.
 */
export async function takePack(
  store: SiteStore,
  owner: Pick<SiteOwner, 'tenant' | 'person'>,
  number: string,
  send: typeof fetch = (input, init) => fetch(input, init),
): Promise<Result<SitePack, TakeRefusal>> {
  const json = await askServer(`/api/site/${encodeURIComponent(number)}`, {}, send)
  if (json === null) return refused({ code: 'no-answer' })
  const refusal = refusalIn(json)
  if (refusal) return refused(refusal)
  const pack = parseSitePack(json)
  if (!pack.ok) return refused({ code: 'pack-malformed' })
  if (pack.value.tenant !== owner.tenant || pack.value.person !== owner.person) return refused({ code: 'other-person' })
  const kept = await store.keepPack(pack.value)
  return kept.ok ? done(pack.value) : kept
}
