import { type StreamId, streamKind } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import type { Desk } from './desk'

/** The project whose roles rule over a stream, or `any` for what belongs to the whole tenant; with the UTC offset kept at that place. */
export type Place = { project: StreamId | 'any'; offset: string | null }

/**
 * Which project a stream stands in: a repair by its opening fact, a nonconformance by its repair, a project by itself; stores, persons,
 * specifications and plans serve all projects. Null when the project or repair it names is not there.
 */
export async function placeOf(
  desk: Pick<Desk, 'factsOf'>,
  stream: StreamId,
  facts: readonly Fact[],
  newBody?: unknown,
): Promise<Place | null> {
  const kind = streamKind(stream)
  if (kind === 'project')
    return facts.length > 0
      ? { project: stream, offset: offsetOf(facts) }
      : { project: 'any', offset: offsetIn(newBody) }
  if (kind === 'repair') {
    const project = projectIn(facts) ?? streamIn(newBody, 'project')
    return project ? placeOfProject(desk, project) : null
  }
  if (kind === 'nonconformance' || kind === 'dossier') {
    const repair = repairIn(facts) ?? streamIn(newBody, 'repair')
    if (!repair) return { project: 'any', offset: null }
    const opened = await desk.factsOf(repair)
    return opened ? placeOf(desk, repair, opened) : null
  }
  return { project: 'any', offset: null }
}

async function placeOfProject(desk: Pick<Desk, 'factsOf'>, project: StreamId): Promise<Place | null> {
  const facts = await desk.factsOf(project)
  return facts ? { project, offset: offsetOf(facts) } : null
}

function projectIn(facts: readonly Fact[]): StreamId | null {
  const opened = facts.find((fact) => fact.kind === 'repair-opened')
  return opened?.kind === 'repair-opened' ? opened.body.project : null
}

function repairIn(facts: readonly Fact[]): StreamId | null {
  for (const fact of facts) {
    if (fact.kind === 'nonconformance-raised') return fact.body.repair ?? null
    if (fact.kind === 'dossier-issued') return fact.body.repair
  }
  return null
}

function offsetOf(facts: readonly Fact[]): string | null {
  const opened = facts.find((fact) => fact.kind === 'project-opened')
  return opened?.kind === 'project-opened' ? opened.body.utcOffset : null
}

function streamIn(body: unknown, field: 'project' | 'repair'): StreamId | null {
  const value =
    typeof body === 'object' && body !== null && field in body ? (body as Record<string, unknown>)[field] : null
  return typeof value === 'string' ? (value as StreamId) : null
}

function offsetIn(body: unknown): string | null {
  const value = typeof body === 'object' && body !== null && 'utcOffset' in body ? body.utcOffset : null
  return typeof value === 'string' ? value : null
}
