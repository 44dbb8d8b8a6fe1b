import * as z from 'zod'
import { SITE_PACK_VERSION, type SitePack } from '@/lib/domain/capture/site-pack'
import { StreamId, streamKind, streamName } from '@/lib/domain/facts/fact'
import { LATE_AFTER_MINUTES } from '@/lib/domain/facts/late-after'
import { foldProject } from '@/lib/domain/fold/fold-project'
import { done, refused } from '@/lib/domain/result'
import { loadRepairFacts } from '@/lib/server/store/load-repair-facts'
import { loadSigningKeys } from '@/lib/server/store/load-signing-keys'
import { loadStoreFacts } from '@/lib/server/store/load-store-facts'
import { likenessOfRepair } from '@/lib/server/store/photo-likeness'
import { clockKindOf } from '@/lib/server/views/clock-kind'
import { loadPersonChoices } from '@/lib/server/views/person-choices'
import { authorise } from './authorise'
import { command } from './command'
import { packBytes } from './pack-bytes'
import { placeOf } from './place-of'

const OpenSitePack = z.strictObject({ repair: StreamId.refine((id) => streamKind(id) === 'repair', 'a repair') })

/**
 * A repair for a device without a network: `{ repair }`. It holds the exact facts of the repair and of every stream that its fold reads, with receipts and digests, and those of every
 * batch, instrument and person that a form may name, with who may sign and the keys of their devices. `bytes` is the JSON, at most 24 MB. Refuses `not-found`, `not-allowed`, and `not-decided` when the record is larger than that.
 */
export const openSitePack = command(OpenSitePack, async (desk, { repair }) => {
  const { actor, store } = desk
  const own = await desk.factsOf(repair)
  const place = own && (await placeOf(desk, repair, own))
  if (!place) return refused({ code: 'not-found' })
  const barred = authorise(actor, place.project, desk.today(place.offset), 'read record')
  if (barred) return refused(barred)
  const [loaded, stores] = [
    await loadRepairFacts(store, actor.tenant, repair),
    await loadStoreFacts(store, actor.tenant),
  ]
  const project = place.project === 'any' ? null : place.project
  const signers = await loadPersonChoices(
    { desk, actor },
    project && foldProject((await desk.factsOf(project)) ?? [], project, desk.now(null)),
  )
  const keys = await loadSigningKeys(store, actor.tenant, new Set(signers.map((one) => one.person)))
  const cited = new Set(loaded.facts.map((fact) => fact.id))
  const facts = [...loaded.facts, ...keys.filter((fact) => !cited.has(fact.id))]
  const pack: SitePack = {
    v: SITE_PACK_VERSION,
    tenant: actor.tenant,
    person: actor.person,
    roles: actor.rolesOn(place.project, desk.today(place.offset)),
    stream: repair,
    number: streamName(repair),
    takenAt: desk.now(place.offset),
    utcOffset: place.offset ?? '+00:00',
    clockKind: await clockKindOf(store, actor.tenant),
    lateAfterMinutes: LATE_AFTER_MINUTES,
    facts,
    stores: stores.facts.filter((fact) => !cited.has(fact.id)),
    receipts: Object.fromEntries(loaded.receipts),
    digests: Object.fromEntries(loaded.sha256Of),
    signers,
    likeness: await likenessOfRepair(store, actor.tenant, repair),
  }
  const bytes = packBytes(pack)
  return bytes.ok ? done({ repair, bytes: bytes.value }) : bytes
})
