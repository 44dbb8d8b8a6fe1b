import type { OutboxEntry } from '@/lib/capture/outbox/outbox-entry'
import type { ProjectPack } from '@/lib/domain/capture/project-pack'
import { SITE_PACK_VERSION, type SitePack } from '@/lib/domain/capture/site-pack'
import { type StreamId, streamName, streamOf } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { citesOf } from '@/lib/domain/fold/cites-of'
import { numbersLeft } from '@/lib/domain/numbers/number-blocks'
import { factsOfEntry } from './local-facts'

/**
 * Repairs that were opened on this device and whose pack from the server is not here yet, as packs: the opening itself, with the specification, plan and project that it stands on and what its entries name, out of
 * the project that the device took along. One that the server refused stays usable until a person deals with it: its number may be chalked on the pipe.
 */
export function openedHere(projects: readonly ProjectPack[], entries: readonly OutboxEntry[]): SitePack[] {
  return entries.flatMap((entry) => {
    if (entry.command !== 'open-repair' || entry.state === 'set aside') return []
    const [opened] = factsOfEntry(entry)
    if (opened?.kind !== 'repair-opened') return []
    const project = projects.find((one) => one.project === opened.body.project && one.person === entry.person)
    return project ? [packOf(project, opened, entries)] : []
  })
}

/** Numbers of this device that are still free in a project, in order: those that neither the record nor any entry of this device bears. @param used numbers that anyone used on this device */
export function numbersHere(
  { blocks, taken }: ProjectPack,
  device: string,
  entries: readonly OutboxEntry[],
  used: readonly string[],
): string[] {
  const borne = entries
    .filter((one) => one.command === 'open-repair')
    .map((one) => one.input.stream.slice('repair:'.length))
  return numbersLeft(blocks, streamOf('device', device), new Set([...taken, ...borne, ...used])).map(
    (one) => one.number,
  )
}

function packOf(project: ProjectPack, opened: Fact, entries: readonly OutboxEntry[]): SitePack {
  const { tenant, person, roles, takenAt, utcOffset, clockKind, lateAfterMinutes, digests } = project
  const own = entries.filter((one) => one.input.stream === opened.stream).flatMap(factsOfEntry)
  const taken = [...project.facts, ...project.stores]
  const near = new Set<StreamId>([opened, ...own].flatMap(citesOf))
  const around = new Set<StreamId>([...near, ...taken.filter((one) => near.has(one.stream)).flatMap(citesOf)])
  return {
    v: SITE_PACK_VERSION,
    tenant,
    person,
    roles,
    stream: opened.stream,
    number: streamName(opened.stream),
    takenAt,
    utcOffset,
    clockKind,
    lateAfterMinutes,
    facts: [opened, ...taken.filter((one) => around.has(one.stream))],
    stores: project.stores.filter((one) => !around.has(one.stream)),
    receipts: {},
    digests,
    likeness: [],
  }
}
