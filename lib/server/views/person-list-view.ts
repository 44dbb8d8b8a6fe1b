import { eq } from 'drizzle-orm'
import { cache } from 'react'
import { accountPersons } from '@/db/schema'
import type { PersonId, StreamId } from '@/lib/domain/facts/fact'
import { addDays } from '@/lib/domain/fold/calendar'
import { foldPerson } from '@/lib/domain/fold/fold-person'
import { foldProject, type RoleGrant } from '@/lib/domain/fold/fold-project'
import { ofKind, ofStream } from '@/lib/domain/fold/order-facts'
import type { PersonState } from '@/lib/domain/fold/store-states'
import type { CalendarDay } from '@/lib/domain/time'
import { listStreams } from '@/lib/server/store/list-streams'
import { loadStreamsOfKind } from '@/lib/server/store/load-facts'
import { loadStreams } from '@/lib/server/store/load-stream'
import type { ReadingDesk } from './reading-desk'

export type PersonStanding = 'qualified' | 'ends soon' | 'ended' | 'no qualification'
export type QualificationLine = {
  number: string
  task: string
  geometries: string[]
  validFrom: CalendarDay | null
  validTo: CalendarDay
}
export type PersonRow = {
  stream: StreamId
  id: PersonId
  name: string
  title: string
  party: string
  roles: string[]
  qualifications: QualificationLine[]
  standing: PersonStanding
  leftOn: CalendarDay | null
  hasAccount: boolean
}

/** Days ahead of its end at which a list says that a qualification ends soon. A reminder on screens; it judges nothing. */
const SOON_DAYS = 30

/** Qualifications as they stand: one that another record corrects is left out. */
export function standingQualifications(person: PersonState): PersonState['qualifications'] {
  const corrected = new Set(person.qualifications.flatMap((one) => one.body.corrects ?? []))
  return person.qualifications.filter((one) => !corrected.has(one.id))
}

/** How a person's qualifications stand on a day: the best of them. */
export function personStanding(person: PersonState, today: CalendarDay): PersonStanding {
  const standing = standingQualifications(person)
  if (standing.length === 0) return 'no qualification'
  const valid = standing.filter((one) => (one.body.validFrom ?? today) <= today && today <= one.body.validTo)
  if (valid.length === 0) return 'ended'
  return valid.some((one) => one.body.validTo > addDays(today, SOON_DAYS)) ? 'qualified' : 'ends soon'
}

/** Every person ever registered, by name: none is ever deleted. */
export const loadPersonRows = cache(async ({ desk, actor }: ReadingDesk): Promise<PersonRow[]> => {
  const streams = (await listStreams(desk.store, actor.tenant, 'person')).map((one) => one.stream)
  const { facts } = await loadStreams(desk.store, actor.tenant, streams)
  const grants = await loadGrantsToday({ desk, actor })
  const withAccount = await loadAccountHolders({ desk, actor })
  const today = desk.today(null)
  const rows = streams.flatMap((stream): PersonRow[] => {
    const state = foldPerson(facts, stream, desk.now(null))
    if (!state) return []
    return [
      {
        stream,
        id: state.id,
        name: state.name,
        title: state.title,
        party: state.party,
        roles: [...new Set(grants.filter((one) => one.person === state.id).map((one) => one.role))],
        qualifications: standingQualifications(state).map(({ body }) => ({
          number: body.number,
          task: body.task,
          geometries: body.geometries ?? [],
          validFrom: body.validFrom ?? null,
          validTo: body.validTo,
        })),
        standing: personStanding(state, today),
        leftOn: ofKind(ofStream(facts, stream), 'person-left').at(-1)?.body.on ?? null,
        hasAccount: withAccount.has(state.id),
      },
    ]
  })
  return rows.sort((a, b) => a.name.localeCompare(b.name))
})

/** Persons who sign with a password of their own, for the second signature of an act; never the one who acts. */
export async function personChoices(reading: ReadingDesk, without: PersonId): Promise<{ id: string; label: string }[]> {
  const rows = await loadPersonRows(reading)
  return rows
    .filter((row) => row.hasAccount && row.leftOn === null && row.id !== without)
    .map((row) => ({ id: row.id, label: `${row.name}${row.roles.length > 0 ? `, ${row.roles.join(', ')}` : ''}` }))
}

/** Persons of a tenant who have an account. */
export async function loadAccountHolders({ desk, actor }: Pick<ReadingDesk, 'desk' | 'actor'>): Promise<Set<string>> {
  const ties = await desk.store.db.queries
    .select({ person: accountPersons.personId })
    .from(accountPersons)
    .where(eq(accountPersons.tenant, actor.tenant))
  return new Set(ties.map((one) => one.person))
}

async function loadGrantsToday({ desk, actor }: Pick<ReadingDesk, 'desk' | 'actor'>): Promise<RoleGrant[]> {
  const { facts } = await loadStreamsOfKind(desk.store, actor.tenant, 'project')
  const today = desk.today(null)
  const projects = [...new Set(facts.map((fact) => fact.stream))]
  return projects
    .flatMap((stream) => foldProject(facts, stream, desk.now(null))?.grants ?? [])
    .filter((one) => one.from <= today && (one.to === null || today <= one.to))
}
