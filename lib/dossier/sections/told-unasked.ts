import { streamName } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { LATE_AFTER_MINUTES } from '@/lib/domain/facts/late-after'
import { clockFaults } from '@/lib/domain/fold/clock-faults'
import { isLate } from '@/lib/domain/fold/effective-records'
import { ofKind } from '@/lib/domain/fold/order-facts'
import type { Remarkable } from '@/lib/domain/fold/remarkable'
import { repairGround } from '@/lib/domain/fold/repair-ground'
import { showValue } from '@/lib/domain/records/show-value'
import { type Moment, minutesBetween, showMoment } from '@/lib/domain/time'
import { type Block, type Cell, cell, paragraph } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { named } from './sign-tables'

type Told = Omit<Remarkable, 'about'>

/** What a reader is told without asking, kind by kind, each with its list or with "None.": late entries, corrections, clock faults, reused photos, and all else that is remarkable. */
export function toldUnasked(context: DossierContext): Block[] {
  const own = context.facts.filter((fact) => fact.stream === context.state.stream)
  const clocks = clockRows(context)
  const photos = photoRows(context)
  const corrections = ofKind(own, 'corrected')
  const listed = new Set([...clocks, ...photos].map((one) => one.fact))
  const { remarkable } = context.state
  const copies = remarkable.filter((one) => one.about === 'copy from paper')
  const rest = remarkable.filter(
    ({ fact, about }) => about === 'other' || ((about === 'clock' || about === 'photo') && !listed.has(fact)),
  )
  return [
    ...lateEntries(own, context),
    ...listOf(
      'Corrections',
      corrections.map((fact) => ({ at: fact.observedAt, fact: fact.id, text: correctionText(fact, context) })),
      context,
    ),
    ...listOf('Transcriptions from paper, and their checks', copies, context),
    ...listOf('Clock faults', clocks, context),
    ...listOf('Reused photos, and photos without their original claims', photos, context),
    ...listOf('Refusals, falls, waivers, events and conflicts', rest, context),
  ]
}

/** Why an entry is late. What was keyed in time and only received late was on its device meanwhile: nobody is asked for a reason. */
function whyLate(fact: Fact): Cell {
  if (fact.late) return cell(`${fact.late.source}: ${fact.late.reason}`)
  return isLate(fact, LATE_AFTER_MINUTES)
    ? cell('no reason given', 'not-proven')
    : cell('keyed in time, waited on its device')
}

function lateEntries(own: readonly Fact[], context: DossierContext): Block[] {
  const rows = own.flatMap((fact): Cell[][] => {
    const receivedAt = context.receipts.get(fact.id)?.receivedAt
    const isLateReceived = receivedAt !== undefined && minutesBetween(fact.enteredAt, receivedAt) > LATE_AFTER_MINUTES
    if (!isLate(fact, LATE_AFTER_MINUTES) && !isLateReceived) return []
    return [
      [
        cell(whatOf(fact)),
        cell(showMoment(fact.observedAt)),
        cell(showMoment(fact.enteredAt)),
        cell(receivedAt ? showMoment(receivedAt) : '–'),
        cell(context.personName(fact.enteredBy)),
        whyLate(fact),
      ],
    ]
  })
  return [
    { kind: 'heading', text: `Late entries: ${rows.length === 0 ? 'none' : rows.length}` },
    rows.length === 0
      ? paragraph(
          'Nothing was keyed more than an hour after the event, or received more than an hour after it was keyed.',
        )
      : {
          kind: 'table',
          sizePt: 7.4,
          columns: ['What', 'Observed', 'Entered', 'Received', 'Entered by', 'Source and reason'].map((title) => ({
            title,
          })),
          rows,
        },
  ]
}

function listOf(title: string, told: readonly Told[], context: DossierContext): Block[] {
  return [
    { kind: 'heading', text: `${title}: ${told.length === 0 ? 'none' : told.length}` },
    ...(told.length === 0
      ? []
      : [
          {
            kind: 'table',
            sizePt: 7.4,
            columns: [{ title: 'Observed' }, { title: 'What' }],
            rows: told.map((one) => [cell(showMoment(one.at)), cell(named(one.text, context))]),
          } as const,
        ]),
  ]
}

function clockRows({ facts, state, photos }: DossierContext): Told[] {
  const ofDevices = clockFaults(repairGround(facts, state.stream, state.asOf, {}))
  const ofPhotos = photos.flatMap(({ photo: { fact, flags } }) =>
    flags
      .filter((flag) => flag.kind === 'clock differs')
      .map(() => ({
        ...toldOf(fact),
        text: `The clock of the camera differs at the photo of point ${fact.body.point}.`,
      })),
  )
  return [...ofDevices, ...ofPhotos]
}

function photoRows({ photos }: DossierContext): Told[] {
  return photos.flatMap(({ no, photo: { fact, flags } }) =>
    flags
      .filter((flag) => flag.kind !== 'clock differs')
      .map(({ kind, other, decision }) => ({
        ...toldOf(fact),
        text: `Photo ${no} of point ${fact.body.point}: ${kind}${other ? ` of one at ${streamName(other.repair)}, point ${other.point}` : ''}; ${decision ? `${decision.body.decision}: ${decision.body.reason}` : 'not decided'}.`,
      })),
  )
}

function toldOf(fact: { id: Told['fact']; observedAt: Moment }): Pick<Told, 'at' | 'fact'> {
  return { at: fact.observedAt, fact: fact.id }
}

/** A fact in few words: its kind, with point and attempt where it has them. */
export function whatOf(fact: Fact): string {
  const place = 'point' in fact.body && fact.body.point ? ` ${fact.body.point}` : ''
  const attempt = place && 'attempt' in fact.body ? `/${fact.body.attempt}` : ''
  return `${fact.kind.replaceAll('-', ' ')}${place}${attempt}`
}

function correctionText(fact: Extract<Fact, { kind: 'corrected' }>, context: DossierContext): string {
  const show = (value: unknown): string => (value === null ? 'nothing' : showValue('', value, context))
  return `Corrected by ${context.personName(fact.observedBy)}: ${fact.body.changes.map((one) => `from ${show(one.from)} to ${show(one.to)}`).join('; ')}. ${fact.body.reason}.`
}
