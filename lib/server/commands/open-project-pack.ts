import * as z from 'zod'
import { PROJECT_PACK_VERSION, type ProjectPack } from '@/lib/domain/capture/project-pack'
import { StreamId, streamKind, streamName, streamOf } from '@/lib/domain/facts/fact'
import { LATE_AFTER_MINUTES } from '@/lib/domain/facts/late-after'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { blockOf, NUMBERS_STREAM, numberBlocks } from '@/lib/domain/numbers/number-blocks'
import { done, refused } from '@/lib/domain/result'
import { listStreams } from '@/lib/server/store/list-streams'
import { loadStoreFacts } from '@/lib/server/store/load-store-facts'
import { loadStreams } from '@/lib/server/store/load-stream'
import { clockKindOf } from '@/lib/server/views/clock-kind'
import { DeviceName } from './allot-numbers'
import { authorise } from './authorise'
import { command } from './command'
import { packBytes } from './pack-bytes'
import { placeOf } from './place-of'

const OpenProjectPack = z.strictObject({
  project: StreamId.refine((id) => streamKind(id) === 'project', 'a project'),
  device: DeviceName,
})

/**
 * A project for a device that opens repairs where there is no network: `{ project, device }`. It holds the project, every issued specification and plan, what a point form may name, and the device's blocks of
 * numbers with those that a repair bears. Refuses `not-found`, `not-allowed`, and `not-decided` when it is too large for a device.
 */
export const openProjectPack = command(OpenProjectPack, async (desk, { project, device }) => {
  const { actor, store } = desk
  const own = await desk.factsOf(project)
  const opened = own && ofKind(own, 'project-opened')[0]
  const place = own && (await placeOf(desk, project, own))
  if (!opened || !place) return refused({ code: 'not-found' })
  const today = desk.today(place.offset)
  const barred = authorise(actor, project, today, 'open repair')
  if (barred) return refused(barred)
  const ground = [
    ...(await listStreams(store, actor.tenant, 'specification')),
    ...(await listStreams(store, actor.tenant, 'plan')),
  ]
  const loaded = await loadStreams(store, actor.tenant, [project, ...ground.map((one) => one.stream)])
  const stores = await loadStoreFacts(store, actor.tenant)
  const all = numberBlocks((await desk.factsOf(NUMBERS_STREAM)) ?? [])
  const blocks = all.filter((one) => one.device === streamOf('device', device) && one.project === project)
  const numbers = (await listStreams(store, actor.tenant, 'repair')).map((one) => streamName(one.stream))
  const pack: ProjectPack = {
    v: PROJECT_PACK_VERSION,
    tenant: actor.tenant,
    person: actor.person,
    roles: actor.rolesOn(project, today),
    project,
    title: `${streamName(project)} ${opened.body.name}`,
    takenAt: desk.now(place.offset),
    utcOffset: place.offset ?? '+00:00',
    clockKind: await clockKindOf(store, actor.tenant),
    lateAfterMinutes: LATE_AFTER_MINUTES,
    blocks,
    taken: numbers.filter((one) => blockOf(blocks, one) !== null),
    // a draft is not worked by: it stays where it is edited
    facts: loaded.facts.filter((one) => one.kind !== 'specification-draft-saved' && one.kind !== 'plan-draft-saved'),
    stores: stores.facts,
    digests: Object.fromEntries([...loaded.sha256Of, ...stores.sha256Of]),
  }
  const bytes = packBytes(pack)
  return bytes.ok ? done({ project, bytes: bytes.value }) : bytes
})
