import { showDecimal } from '@/lib/domain/decimal'
import type { PersonId, StreamId } from '@/lib/domain/facts/fact'
import { streamName } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { foldNonconformance } from '@/lib/domain/fold/fold-nonconformance'
import type { NonconformanceState } from '@/lib/domain/fold/nonconformance-state'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { loadNames, mayRead, type ReadingDesk } from './reading-desk'
import { type EventLine, eventLine } from './trace-event-line'

export type NonconformanceView = {
  state: NonconformanceState
  repair: RepairState | null
  project: StreamId | 'any'
  events: EventLine[]
  names: Record<PersonId, string>
  length: number
}

/** A nonconformance as its page shows it; null when it is not there or of a project that the reader may not read. */
export async function loadNonconformanceView(
  reading: ReadingDesk,
  stream: StreamId,
): Promise<NonconformanceView | null> {
  const { desk } = reading
  const facts = await desk.factsOf(stream)
  const state = facts && foldNonconformance(facts, stream, desk.now(null))
  if (!facts || !state) return null
  const repair = state.raised.body.repair ? await desk.stateOf(state.raised.body.repair) : null
  const project = repair?.opened.body.project ?? 'any'
  if (project !== 'any' ? !mayRead(reading, project) : !reading.roles.some((role) => role !== 'administrator'))
    return null
  const names = await loadNames(desk)
  return {
    state,
    repair,
    project,
    names,
    length: facts.length,
    events: state.facts.flatMap((fact) => {
      const words = wordsOf(fact, names)
      return words ? [eventLine(fact, names, words[0], words[1])] : []
    }),
  }
}

function wordsOf(fact: Fact, names: Record<string, string>): [string, string] | null {
  switch (fact.kind) {
    case 'nonconformance-raised':
      return ['Raised', fact.body.what]
    case 'contained':
      return ['Contained', fact.body.action]
    case 'assessed':
      return ['Assessed', `${fact.body.finding}${fact.body.cause ? ` Cause: ${fact.body.cause}` : ''}`]
    case 'disposition-proposed':
      return [`Proposed: ${fact.body.disposition}`, `${fact.body.what}${limitWords(fact.body.limits)}`]
    case 'disposition-approved':
      return [`Approved for the ${fact.body.party}`, fact.body.writing ? `in writing: ${fact.body.writing}` : '']
    case 'disposition-rejected':
      return ['Proposal rejected', fact.body.reason]
    case 'action-started':
      return ['Action started', fact.body.what]
    case 'action-done':
      return ['Action done', fact.body.what]
    case 'verified':
      return ['Verified', fact.body.how]
    case 'closed':
      return ['Closed', fact.body.remark ?? '']
    case 'reopened':
      return ['Reopened', fact.body.reason]
    case 'not-a-nonconformance':
      return ['Rejected as not a nonconformance', fact.body.reason]
    case 'voided-duplicate':
      return [`Voided as a duplicate of ${streamName(fact.body.of)}`, fact.body.reason]
    case 'does-not-block':
      return [`Agreed for the ${fact.body.party}: does not block acceptance`, fact.body.reason]
    case 'corrective-action':
      return [
        'Corrective action named',
        `${fact.body.what} (${names[fact.body.owner] ?? fact.body.owner}, by ${fact.body.dueOn})`,
      ]
    case 'corrective-action-done':
      return ['Corrective action done', fact.body.evidence]
    default:
      return null
  }
}

/** The limits of a proposal in words; empty when it states none. */
export function limitWords(
  limits:
    | {
        lifeYears?: { digits: number; scale: number } | undefined
        nextInspectionOn?: string | undefined
        other?: string | undefined
      }
    | undefined,
): string {
  if (!limits) return ''
  const parts = [
    limits.lifeYears ? `life ${showDecimal(limits.lifeYears)} yr` : null,
    limits.nextInspectionOn ? `next inspection ${limits.nextInspectionOn}` : null,
    limits.other ?? null,
  ].filter((one) => one !== null)
  return parts.length > 0 ? ` Limits: ${parts.join(', ')}.` : ''
}
