import type { PersonId } from '@/lib/domain/facts/fact'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { foldInstrument } from '@/lib/domain/fold/fold-instrument'
import { foldPerson } from '@/lib/domain/fold/fold-person'
import type { AttemptState, RecordState, RepairState } from '@/lib/domain/fold/repair-state'
import { qualificationOn } from '@/lib/domain/judge/qualification-on'
import { PARTIES } from '@/lib/domain/roles'
import { dayOf, showMoment } from '@/lib/domain/time'
import type { Desk } from '@/lib/server/commands/desk'
import { loadStream } from '@/lib/server/store/load-stream'
import { instrumentSteps } from './audit-chain-instrument'
import { type ChainStep, factHref, missing, notAsked, step } from './audit-chain-step'
import { instrumentsBehind } from './audit-instruments'
import type { KeyedReading } from './audit-readings'

const TASKS = ['applicator', 'supervisor', 'inspector'] as const

/** What stands behind one reading, step by step from its instrument to the release that rested on it. What is missing is said. */
export async function chainOf(
  desk: Desk,
  fact: FactOf<'recorded'>,
  reading: KeyedReading,
  names: Readonly<Record<PersonId, string>>,
): Promise<ChainStep[]> {
  const state = await desk.stateOf(fact.stream)
  const attempt = attemptOf(state, fact)
  const record = attempt?.records.find((one) => one.fact.id === fact.id)
  const behind = instrumentsBehind(fact, reading)
  const instruments: ChainStep[] = []
  for (const stream of behind.instruments) {
    const { facts } = await loadStream(desk.store, desk.actor.tenant, stream)
    instruments.push(...instrumentSteps(stream, foldInstrument(facts, stream, desk.now(null)), behind.at, state))
  }
  return [
    ...(instruments.length > 0 ? instruments : [missing('Instrument', 'the record names none for this reading')]),
    ...(await personSteps(desk, fact, state, names)),
    photoStep(state, attempt, fact, reading, record),
    signatureStep(attempt, record),
    releaseStep(state, attempt, names),
  ]
}

function attemptOf(state: RepairState | null, fact: FactOf<'recorded'>): AttemptState | undefined {
  return state?.points
    .find((one) => one.no === fact.body.point)
    ?.attempts.find((one) => one.attempt === fact.body.attempt)
}

async function personSteps(
  desk: Desk,
  fact: FactOf<'recorded'>,
  state: RepairState | null,
  names: Readonly<Record<PersonId, string>>,
): Promise<ChainStep[]> {
  const stream = `person:${fact.observedBy}` as typeof fact.stream
  const { facts } = await loadStream(desk.store, desk.actor.tenant, stream)
  const person = foldPerson(facts, stream, desk.now(null))
  const name = names[fact.observedBy] ?? fact.observedBy
  if (!person) return [missing('Person', `${name} is not on record`)]
  const entered = fact.enteredBy === fact.observedBy ? '' : `, entered by ${names[fact.enteredBy] ?? fact.enteredBy}`
  const day = dayOf(fact.observedAt)
  const answers = TASKS.map((task) =>
    qualificationOn(person, task, day, state?.opened.body.geometry ?? 'straight', null),
  )
  const qualified = answers.flatMap((one) => (one.state === 'qualified' ? [one.by] : []))
  const others = answers.flatMap((one) => (one.state === 'qualified' || one.state === 'none' ? [] : [one]))
  const words = ({ body }: FactOf<'qualification-recorded'>) => `${body.number}, ${body.task}, to ${body.validTo}`
  return [
    step('Person', [{ text: `${name}, ${person.title}${entered}`, href: `/people/${encodeURIComponent(person.id)}` }]),
    qualified.length > 0
      ? step(
          'Qualification that day',
          qualified.map((one) => ({ text: words(one), href: factHref(one.id) })),
        )
      : missing(
          'Qualification that day',
          others.length > 0
            ? others.map((one) => `${words(one.by)}: ${one.state.replaceAll('-', ' ')} on ${day}`).join('; ')
            : 'none on record',
        ),
  ]
}

function photoStep(
  state: RepairState | null,
  attempt: AttemptState | undefined,
  fact: FactOf<'recorded'>,
  { path }: KeyedReading,
  record: RecordState | undefined,
): ChainStep {
  const marked = markOf(record?.fact.body.record, path)
  const photos = attempt?.photos ?? []
  if (photos.length === 0) {
    const asked = state?.points.find((one) => one.no === fact.body.point)?.plan.photos.length ?? 0
    return asked > 0
      ? missing('Photos at the point', `none, and the plan asks for ${asked}`)
      : notAsked('Photos at the point', 'none; the plan asks for none')
  }
  const nearness = (one: (typeof photos)[number]) =>
    one.fact.body.mark !== undefined && one.fact.body.mark === marked ? 0 : one.fact.body.record === fact.id ? 1 : 2
  const near = ['at this mark', 'of this record', 'of this point and attempt'] as const
  return step(
    'Photos at the point',
    photos
      .toSorted((a, b) => nearness(a) - nearness(b))
      .map((one) => ({
        text: `${one.fact.body.caption}${one.flags.map((flag) => `; ${flag.kind}${flag.decision ? `, decided: ${flag.decision.body.decision}` : ''}`).join('')}${one.judged?.body.decision === 'not accepted' ? '; not accepted' : ''}`,
        note: `${near[nearness(one)]}, SHA-256 ${one.fact.body.photo.sha256.slice(0, 16)}…`,
        href: factHref(one.fact.id),
        photo: one.fact.body.photo.sha256,
      })),
  )
}

function markOf(record: unknown, path: KeyedReading['path']): string | undefined {
  let [value, mark]: [unknown, string | undefined] = [record, undefined]
  for (const part of path) {
    if (typeof value !== 'object' || value === null) return mark
    if ('mark' in value && typeof value.mark === 'string') mark = value.mark
    value = (value as Record<string | number, unknown>)[part]
  }
  return mark
}

function signatureStep(attempt: AttemptState | undefined, record: RecordState | undefined): ChainStep {
  const over = (attempt?.signatures ?? []).filter((one) =>
    one.fact.body.covers.some((cover) => cover.fact === record?.fact.id),
  )
  if (over.length === 0) return missing('Signatures over the record', 'none covers it')
  return step(
    'Signatures over the record',
    over.map(({ fact, state }) => ({
      text: `${fact.body.name}, ${fact.body.role}: ${fact.body.meaning}`,
      note: `${showMoment(fact.observedAt)}; ${state === 'broken' ? 'no longer covers what it signed' : record?.signedBy.includes(fact.id) ? 'stands' : 'does not cover every correction'}`,
      href: factHref(fact.id),
      isWrong: state === 'broken' || !record?.signedBy.includes(fact.id),
    })),
  )
}

function releaseStep(
  state: RepairState | null,
  attempt: AttemptState | undefined,
  names: Readonly<Record<PersonId, string>>,
): ChainStep {
  const point = state?.points.find((one) => one.no === attempt?.point)
  const holders = PARTIES.filter((party) => point?.participation[party] === 'H')
  const releases = attempt?.releases ?? []
  if (releases.length === 0)
    return attempt === undefined
      ? missing('Release', `the plan has no such point or attempt`)
      : holders.length === 0
        ? notAsked('Release', 'the point is held by no party')
        : missing('Release', `none by ${holders.join(', ')}; the attempt is ${attempt.state}`)
  const lacking = holders.filter((party) => !releases.some((one) => one.fact.body.party === party))
  return step('Release', [
    ...releases.map((one) => ({
      text: `${one.fact.body.party}, ${names[one.fact.observedBy] ?? one.fact.observedBy}: ${one.state}`,
      note: `${showMoment(one.fact.observedAt)}${one.fell ? `; ${one.fell.cause}` : ''}`,
      href: factHref(one.fact.id),
      isWrong: ['lapsed', 'withdrawn', 'in question'].includes(one.state),
    })),
    ...lacking.map((party) => ({ text: `none by ${party}`, href: null, isWrong: true })),
  ])
}
