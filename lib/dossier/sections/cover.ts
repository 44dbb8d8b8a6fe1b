import { STANDING_CAUTION } from '@/lib/domain/caution'
import { showSigned } from '@/lib/domain/decimal'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import type { Picture } from '@/lib/domain/pictures/picture'
import { sectionPicture } from '@/lib/domain/pictures/section-picture'
import { showMoment } from '@/lib/domain/time'
import { type Block, type Cell, paragraph, plain, type Sign, singleLine, strong } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { TEMPLATE } from '../dossier-input'
import { BUILT_COLUMNS, builtRows } from './built-rows'
import { missingByPoint } from './missing-by-point'
import { sealBlocks } from './seal-block'

/** How much of the tables stands on the cover; the first that fits one sheet is taken. */
export type CoverRoom = { builtRows: number; missingRows: number; pictureHeightPt: number }
export const COVER_ROOMS: readonly CoverRoom[] = [
  [9, 8, 232],
  [9, 6, 220],
  [8, 5, 220],
  [7, 5, 215],
  [7, 4, 215],
  [6, 4, 215],
  [5, 4, 210],
  [5, 3, 210],
  [4, 3, 205],
  [4, 2, 205],
  [3, 2, 200],
  [2, 2, 195],
  [2, 1, 190],
  [1, 1, 180],
  [0, 0, 160],
].map(([builtRows = 0, missingRows = 0, pictureHeightPt = 0]) => ({ builtRows, missingRows, pictureHeightPt }))

/** The status of the repair with its sign. Accepted under concession is never drawn as a pass. */
export function statusSign({ status, acceptance }: RepairState): Sign {
  const kind = acceptance?.fact.body.kind
  const word = status.charAt(0).toUpperCase() + status.slice(1)
  const accepted = kind && kind !== 'accepted' && status !== kind ? `${word}, ${kind}` : word
  if (status === 'overdue') return { glyph: 'lapsed', text: accepted }
  if (kind === 'accepted under concession' || status === 'accepted under concession')
    return { glyph: 'fail', text: accepted }
  if (kind === 'accepted on condition') return { glyph: 'not-proven', text: accepted }
  if (status === 'accepted' || status === 'in service' || status === 'life extended')
    return { glyph: 'pass', text: accepted }
  return {
    glyph: status === 'on hold' ? 'lapsed' : status === 'removed' || status === 'abandoned' ? 'later' : 'open',
    text: accepted,
  }
}

/** Issue line for cover and title block. */
export function issueLine({ head, state }: DossierContext): string {
  return head.kind === 'issue'
    ? `rev ${head.revision}, ${state.asOf.slice(0, 10)}, ${head.purpose}`
    : `for review, not issued, ${state.asOf.slice(0, 10)}`
}

/** What the cover shows at most; taken once, however often it is tried on a sheet. */
export type CoverParts = { picture: Picture; built: Cell[][]; missing: Cell[][] }

/** Gather the cover's picture and tables. */
export function coverParts(context: DossierContext): CoverParts {
  return {
    picture: sectionPicture(context.state),
    built: mostTelling(builtRows(context)),
    missing: missingByPoint(context),
  }
}

/** Section 0: what, where, status and purpose; the cut through the leak; built against design; what is missing; the caution. */
export function coverBlocks(
  context: DossierContext,
  parts: CoverParts,
  room: CoverRoom,
  sheetOf: (section: string) => string,
): Block[] {
  const { state, head, project } = context
  const { body } = state.opened
  const previous = state.issues.at(-1)
  const issue: [string, string][] = [
    ['Issue', head.kind === 'issue' ? `rev ${head.revision}` : 'for review, not issued'],
    ['Purpose', head.kind === 'issue' ? head.purpose : 'review'],
    [
      head.kind === 'issue' ? 'Supersedes' : 'Last issue, not superseded',
      previous
        ? `rev ${previous.fact.body.revision} of ${previous.fact.body.asOf.slice(0, 10)}`
        : 'nothing, no earlier issue',
    ],
    ['State as of', showMoment(state.asOf)],
    ['Facts, rules, template', `${context.facts.length} facts, ${state.rules}, ${TEMPLATE}`],
    [
      'Specification, plan',
      `${state.specification ? `${state.specification.body.number} rev ${state.specification.revision}` : 'none'}; ${state.plan ? `${state.plan.body.number} rev ${state.plan.revision}` : 'none'}`,
    ],
  ]
  const { missing, built, picture } = parts
  return [
    {
      kind: 'cover',
      organisation:
        [project?.opened.body.owner, project?.opened.body.site].filter(Boolean).join(' · ') || context.organisation,
      title: `Repair ${state.number}`,
      place: `${capital(body.lineTitle)} ${body.line}, ${placeText(state)}`,
      sign: statusSign(state),
      lead: lead(context),
    },
    ...(context.isDemo
      ? [
          {
            kind: 'paragraph',
            spans: [strong('Demonstration record. Every person, organisation and reading in it is invented.', 'fail')],
          } as const,
        ]
      : []),
    { kind: 'picture', title: picture.title, picture, maxHeightPt: room.pictureHeightPt },
    singleLine(issue),
    { kind: 'heading', text: 'As built against design' },
    { kind: 'table', columns: BUILT_COLUMNS, rows: built.slice(0, room.builtRows), sizePt: 7.4 },
    ...(built.length > room.builtRows
      ? [paragraph(`and ${built.length - room.builtRows} more criteria in the summary, sheet ${sheetOf('3')}`, 'soft')]
      : built.length === 0
        ? [paragraph('Nothing judged yet.', 'not-proven')]
        : []),
    {
      kind: 'heading',
      text: `Not in this ${head.kind === 'issue' ? 'issue' : 'copy'}: ${missing.length === 0 ? 'nothing that the plan asks for' : `${state.missing.length} ${state.missing.length === 1 ? 'thing' : 'things'}`}`,
    },
    ...(missing.length > 0
      ? [
          {
            kind: 'table',
            columns: [{ title: 'Point' }, { title: 'Missing' }],
            rows: missing.slice(0, room.missingRows),
            sizePt: 7.4,
          } as const,
        ]
      : []),
    ...(missing.length > room.missingRows
      ? [
          paragraph(
            `${room.missingRows > 0 ? 'and ' : 'missing '}more at ${missing.length - room.missingRows} ${missing.length - room.missingRows === 1 ? 'place' : 'places'}, all listed on sheet ${sheetOf('2')}`,
            'soft',
          ),
        ]
      : []),
    ...sealBlocks(context),
    {
      kind: 'paragraph',
      spans: [plain(`${STANDING_CAUTION} `, 'soft'), plain(`Record held by ${context.organisation}.`, 'soft')],
      sizePt: 7,
    },
  ]
}

/** Datum, station from it and clock position, with the direction of view. */
export function placeText({ opened: { body } }: RepairState): string {
  return `${body.datum} ${showSigned(body.stationFromDatum)} mm, ${body.clock} o’clock ${body.clockView}`
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

function lead({ state }: DossierContext): string {
  const failed = state.points.flatMap((point) =>
    point.attempts.filter((attempt) => attempt.verdict === 'fail' && attempt.criteria.length > 0),
  )
  const doubted = state.points.filter(
    (point) =>
      point.current.state === 'in question' || point.current.questions.some((one) => one.decision === undefined),
  )
  const open = state.nonconformances.filter((one) => one.isOpen)
  const sentences = [
    state.acceptance
      ? `${capital(state.acceptance.fact.body.kind)} on ${state.acceptance.fact.observedAt.slice(0, 10)}, life ${state.acceptance.lifeYears} years to ${state.acceptance.lifeEndsOn}, next inspection by ${state.acceptance.nextInspectionOn}.`
      : 'Not accepted.',
    failed.length > 0
      ? `Failed: ${failed.map((one) => `point ${one.point} attempt ${one.attempt}${one.conceded ? ' (conceded)' : ''}`).join(', ')}.`
      : '',
    doubted.length > 0 ? `In question: point ${doubted.map((one) => one.no).join(', ')}.` : '',
    open.length > 0 ? `Open nonconformances: ${open.map((one) => one.number).join(', ')}.` : '',
  ]
  return sentences.filter(Boolean).join(' ')
}

/** What fails or is in question first, so that a short table never leaves it out before a pass. */
function mostTelling(rows: Cell[][]): Cell[][] {
  const isPass = (row: Cell[]): boolean =>
    row.every((one) => !one.sign || (one.sign.glyph === 'pass' && one.spans.length === 0))
  return [...rows.filter((row) => !isPass(row)), ...rows.filter(isPass)]
}
