import {
  type CaptureGround,
  type CaptureStores,
  captureGround,
  captureStores,
} from '@/lib/domain/capture/capture-ground'
import { StreamId } from '@/lib/domain/facts/fact'
import { LATE_AFTER_MINUTES } from '@/lib/domain/facts/late-after'
import { repairGround } from '@/lib/domain/fold/repair-ground'
import { loadRepairFacts } from '@/lib/server/store/load-repair-facts'
import { loadStoreFacts } from '@/lib/server/store/load-store-facts'
import { clockKindOf } from './clock-kind'
import { mayRead, type ReadingDesk } from './reading-desk'

export type CaptureView = CaptureGround & {
  utcOffset: string
  clockKind: 'real' | 'demo' | 'test'
  lateAfterMinutes: number
}

/** What a point form draws on: the judge's context with every batch, instrument and person of the tenant, and the choices. Null when not there. */
export async function loadCaptureView(
  reading: ReadingDesk,
  number: string,
  point: string,
  attempt: number,
  correcting: string | null,
): Promise<CaptureView | null> {
  const stream = StreamId.safeParse(`repair:${number}`)
  if (!stream.success) return null
  const { desk, actor } = reading
  const loaded = await loadRepairFacts(desk.store, actor.tenant, stream.data)
  if (loaded.facts.length === 0) return null
  const ground = repairGround(loaded.facts, stream.data, desk.now(null), {})
  const { body } = ground.opened
  if (!mayRead(reading, body.project)) return null
  const asked = { point, attempt, correcting, me: actor.person }
  const capture = captureGround(ground, await loadStores(reading), asked)
  if (!capture) return null
  const project = (await desk.factsOf(body.project))?.find((fact) => fact.kind === 'project-opened')
  return {
    ...capture,
    utcOffset: project?.kind === 'project-opened' ? project.body.utcOffset : '+00:00',
    clockKind: await clockKindOf(desk.store, actor.tenant),
    lateAfterMinutes: LATE_AFTER_MINUTES,
  }
}

async function loadStores({ desk, actor }: ReadingDesk): Promise<CaptureStores> {
  return captureStores((await loadStoreFacts(desk.store, actor.tenant)).facts, desk.now(null))
}
