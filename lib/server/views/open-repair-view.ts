import { type RepairGrounds, repairGroundsOf } from '@/lib/domain/capture/repair-grounds'
import type { StreamKind } from '@/lib/domain/facts/fact'
import { streamName } from '@/lib/domain/facts/fact'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { listStreams } from '@/lib/server/store/list-streams'
import { loadStreams } from '@/lib/server/store/load-stream'
import { mayRead, type ReadingDesk } from './reading-desk'

export type OpenRepairView = RepairGrounds & {
  projects: { stream: string; name: string }[]
  clockView: string
}

/** Projects, and specifications and plans with an issued revision, that a new repair may stand on. */
export async function loadOpenRepairView(reading: ReadingDesk): Promise<OpenRepairView> {
  const { desk, actor } = reading
  const load = async (kind: StreamKind) => {
    const streams = (await listStreams(desk.store, actor.tenant, kind)).map((one) => one.stream)
    return (await loadStreams(desk.store, actor.tenant, streams)).facts
  }
  const [projects, specifications, plans] = [await load('project'), await load('specification'), await load('plan')]
  return {
    projects: ofKind(projects, 'project-opened')
      .filter((fact) => mayRead(reading, fact.stream))
      .map((fact) => ({ stream: fact.stream, name: `${streamName(fact.stream)} ${fact.body.name}` })),
    ...repairGroundsOf([...specifications, ...plans]),
    clockView: 'looking downstream',
  }
}
