import { streamName } from '@/lib/domain/facts/fact'
import type { AttemptState, PointState } from '@/lib/domain/fold/repair-state'
import { RECORD_TITLES } from '@/lib/domain/records/record-titles'
import { showMoment } from '@/lib/domain/time'
import { type Block, paragraph } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { groupsOf } from '../groups-of'
import { recordBlocks } from '../records/record-blocks'
import { isLog, recordLog } from '../records/record-log'
import { attemptMaps } from './attempt-maps'
import { drawnSignatures } from './drawn-signatures'
import { criteriaTable, findings, questions, working } from './judged-blocks'
import { photoCells } from './photo-cells'
import { lacksOf, releasesTable, signaturesTable } from './sign-tables'
import { attemptSign, stateSign } from './signs'

const PHOTOS_AT_POINT = 3

/** Everything about one attempt at a point: limits and findings, records in full, photos, signatures, releases. Failed and superseded attempts are printed like any other. */
export function attemptBlocks(point: PointState, attempt: AttemptState, context: DossierContext): Block[] {
  const revisions = [
    ...new Set(attempt.criteria.map((one) => `${streamName(one.specification)} rev ${one.revision}`)),
  ].join(', ')
  const count = point.attempts.length
  const title: Block = {
    kind: 'title',
    eyebrow: [`Point ${point.no}`, `attempt ${attempt.attempt}${count > 1 ? ` of ${count}` : ''}`, revisions]
      .filter(Boolean)
      .join(' · '),
    text: point.plan.title,
    sign: attemptSign(attempt),
    state: stateSentence(attempt, context),
  }
  if (attempt.records.length === 0 && attempt.photos.length === 0)
    return [title, ...notApplicable(attempt, context), ...lacksOf(attempt, context)]
  return [
    { kind: 'break', unlessLeft: 0.42 },
    title,
    ...opening(attempt, context),
    ...notApplicable(attempt, context),
    ...criteriaTable(attempt),
    ...findings(attempt, context),
    ...questions(attempt, context),
    ...attemptMaps(attempt, context.state),
    ...records(attempt, context),
    ...photos(attempt, context),
    ...signaturesTable(attempt.signatures, context),
    ...drawnSignatures(attempt.signatures, context),
    ...releasesTable(attempt, context),
    ...lacksOf(attempt, context),
    ...working(attempt),
  ]
}

function stateSentence(attempt: AttemptState, context: DossierContext): string {
  const parts = [`State: ${stateSign(attempt).text}`]
  if (attempt.criteria.length > 0) parts.push(`verdict: ${attempt.verdict}`)
  if (attempt.conceded) parts.push(`conceded by ${streamName(attempt.conceded)}, the result stays ${attempt.verdict}`)
  if (attempt.firstAt)
    parts.push(
      `${showMoment(attempt.firstAt)}${attempt.lastAt && attempt.lastAt !== attempt.firstAt ? ` to ${showMoment(attempt.lastAt)}` : ''}`,
    )
  if (attempt.submitted)
    parts.push(
      `submitted by ${context.personName(attempt.submitted.observedBy)} ${showMoment(attempt.submitted.observedAt)}`,
    )
  return parts.join(' · ')
}

function opening(attempt: AttemptState, context: DossierContext): Block[] {
  const { opened } = attempt
  if (!opened) return []
  const { body } = opened
  return [
    paragraph(
      `Attempt ${attempt.attempt} opened ${showMoment(opened.observedAt)} by ${context.personName(opened.observedBy)}: ${body.reason}${body.nonconformance ? ` (${streamName(body.nonconformance)})` : ''}`,
      'soft',
    ),
  ]
}

function notApplicable(attempt: AttemptState, context: DossierContext): Block[] {
  const fact = attempt.notApplicable
  return fact
    ? [
        paragraph(
          `Not applicable, ${context.personName(fact.observedBy)}, ${showMoment(fact.observedAt)}: ${fact.body.reason}`,
        ),
      ]
    : []
}

/** Records in the order observed; several of one type with single values only stand side by side, where the first of them stood. */
function records(attempt: AttemptState, context: DossierContext): Block[] {
  const byType = groupsOf(attempt.records, (one) => one.record.type)
  return attempt.records.flatMap((one) => {
    const same = byType.get(one.record.type) ?? []
    if (isLog(same)) return same[0] === one ? recordLog(same, context) : []
    const title = RECORD_TITLES[one.record.type] ?? one.record.type
    return recordBlocks(
      one,
      attempt,
      context,
      same.length > 1 ? `${title}, record ${same.indexOf(one) + 1} of ${same.length}` : title,
    )
  })
}

function photos(attempt: AttemptState, context: DossierContext): Block[] {
  const own = context.photos.filter((one) => one.attempt === attempt)
  if (own.length === 0) return []
  const more =
    own.length > PHOTOS_AT_POINT
      ? [
          paragraph(
            own.length === PHOTOS_AT_POINT + 1
              ? `Photo ${own.at(-1)?.no} of this attempt is in section 19.`
              : `Photos ${own[PHOTOS_AT_POINT]?.no} to ${own.at(-1)?.no} of this attempt are in section 19.`,
            'soft',
          ),
        ]
      : []
  return [
    { kind: 'heading', text: 'Photos' },
    {
      kind: 'photos',
      perRow: 3,
      pictureHeightPt: 104,
      photos: photoCells(own.slice(0, PHOTOS_AT_POINT), context, 'short'),
    },
    ...more,
  ]
}
