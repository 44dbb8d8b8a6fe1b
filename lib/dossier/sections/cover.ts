import { STANDING_CAUTION } from '@/lib/domain/caution'
import { showDecimal } from '@/lib/domain/decimal'
import { sectionPicture } from '@/lib/domain/pictures/section-picture'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { showMoment } from '@/lib/domain/time'
import { type Block, cell, paragraph, plain, type Sign, singleLine, strong } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { TEMPLATE } from '../dossier-input'
import { builtRows, BUILT_COLUMNS } from './built-rows'
import { named } from './sign-tables'

const MISSING_ON_COVER = 6

/** The status of the repair with its sign. Accepted under concession is never drawn as a pass. */
export function statusSign({ status, acceptance }: RepairState): Sign {
  const kind = acceptance?.fact.body.kind
  const word = status.charAt(0).toUpperCase() + status.slice(1)
  const accepted = kind && kind !== 'accepted' && status !== kind ? `${word}, ${kind}` : word
  if (status === 'overdue') return { glyph: 'lapsed', text: accepted }
  if (kind === 'accepted under concession' || status === 'accepted under concession') return { glyph: 'fail', text: accepted }
  if (kind === 'accepted on condition') return { glyph: 'not-proven', text: accepted }
  if (status === 'accepted' || status === 'in service' || status === 'life extended') return { glyph: 'pass', text: accepted }
  return { glyph: status === 'on hold' ? 'lapsed' : status === 'removed' || status === 'abandoned' ? 'later' : 'open', text: accepted }
}

/** Issue line for cover and title block. */
export function issueLine({ head, state }: DossierContext): string {
  return head.kind === 'issue' ? `rev ${head.revision}, ${state.asOf.slice(0, 10)}, ${head.purpose}` : `for review, not issued, ${state.asOf.slice(0, 10)}`
}

/** Section 0: what, where, status and purpose; the cut through the leak; built against design; what is missing; the caution. */
export function coverBlocks(context: DossierContext, missingSheet: string): Block[] {
  const { state, head, project } = context
  const { body } = state.opened
  const previous = state.issues.at(-1)
  const issue: [string, string][] = [
    ['Issue', head.kind === 'issue' ? `rev ${head.revision}` : 'for review, not issued'], ['Purpose', head.kind === 'issue' ? head.purpose : 'review'],
    ['Supersedes', previous ? `rev ${previous.fact.body.revision} of ${previous.fact.body.asOf.slice(0, 10)}` : 'nothing, no earlier issue'], ['State as of', showMoment(state.asOf)],
    ['Facts, rules, template', `${context.facts.length} facts, ${state.rules}, ${TEMPLATE}`], ['Specification, plan', `${state.specification ? `${state.specification.body.number} rev ${state.specification.revision}` : 'none'}; ${state.plan ? `${state.plan.body.number} rev ${state.plan.revision}` : 'none'}`],
  ]
  const missing = state.missing
  return [
    { kind: 'cover', organisation: [project?.opened.body.owner, project?.opened.body.site].filter(Boolean).join(' · ') || context.organisation, title: `Repair ${state.number}`, place: `${capital(body.lineTitle)} ${body.line}, ${placeText(state)}`, sign: statusSign(state), lead: lead(context) },
    ...(context.isDemo ? [{ kind: 'paragraph', spans: [strong('Demonstration record. Every person, organisation and reading in it is invented.', 'fail')] } as const] : []),
    { kind: 'picture', title: sectionPicture(state).title, picture: sectionPicture(state), maxHeightPt: 232 },
    singleLine(issue),
    { kind: 'heading', text: 'As built against design' }, { kind: 'table', columns: BUILT_COLUMNS, rows: builtRows(context).slice(0, 9), sizePt: 7.6 },
    { kind: 'heading', text: `Not in this ${head.kind === 'issue' ? 'issue' : 'copy'}: ${missing.length === 0 ? 'nothing that the plan asks for' : `${missing.length} ${missing.length === 1 ? 'thing' : 'things'}`}` },
    ...(missing.length > 0 ? [{ kind: 'table', columns: [{ title: 'Point' }, { title: 'Missing' }], rows: missing.slice(0, MISSING_ON_COVER).map((one) => [cell(one.point ?? '–'), cell(named(one.text, context))]), sizePt: 7.6 } as const] : []),
    ...(missing.length > MISSING_ON_COVER ? [paragraph(`and ${missing.length - MISSING_ON_COVER} more, all listed on sheet ${missingSheet}`, 'soft')] : []),
    { kind: 'paragraph', spans: [plain(`${STANDING_CAUTION} `, 'soft'), plain(`Record held by ${context.organisation}.`, 'soft')], sizePt: 7 },
  ]
}

/** Datum, station from it and clock position, with the direction of view. */
export function placeText({ opened: { body } }: RepairState): string {
  const station = showDecimal(body.stationFromDatum)
  return `${body.datum} ${station.startsWith('-') ? `−${station.slice(1)}` : `+${station}`} mm, ${body.clock} o’clock ${body.clockView}`
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

function lead({ state }: DossierContext): string {
  const failed = state.points.flatMap((point) => point.attempts.filter((attempt) => attempt.verdict === 'fail' && attempt.criteria.length > 0))
  const doubted = state.points.filter((point) => point.current.state === 'in question' || point.current.questions.some((one) => one.decision === undefined))
  const open = state.nonconformances.filter((one) => one.isOpen)
  const sentences = [
    state.acceptance ? `${capital(state.acceptance.fact.body.kind)} on ${state.acceptance.fact.observedAt.slice(0, 10)}, life ${state.acceptance.lifeYears} years to ${state.acceptance.lifeEndsOn}, next inspection by ${state.acceptance.nextInspectionOn}.` : 'Not accepted.',
    failed.length > 0 ? `Failed: ${failed.map((one) => `point ${one.point} attempt ${one.attempt}${one.conceded ? ' (conceded)' : ''}`).join(', ')}.` : '',
    doubted.length > 0 ? `In question: point ${doubted.map((one) => one.no).join(', ')}.` : '',
    open.length > 0 ? `Open nonconformances: ${open.map((one) => one.number).join(', ')}.` : '',
  ]
  return sentences.filter(Boolean).join(' ')
}
