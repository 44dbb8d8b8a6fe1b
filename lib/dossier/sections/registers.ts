import { showDecimal } from '@/lib/domain/decimal'
import { type StreamId, streamKind } from '@/lib/domain/facts/fact'
import type { Use } from '@/lib/domain/fold/repair-state'
import { showReadingUnit, showUnit } from '@/lib/domain/reading'
import { dayOf } from '@/lib/domain/time'
import { type Block, type Cell, cell, head, paragraph, strong } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { shortMoment } from '../records/short-moment'

function usesOf({ state }: DossierContext, stream: StreamId): Use[] {
  return state.uses.filter((one) => one.of === stream)
}

function usedSpan(uses: readonly Use[]): string {
  const points = [...new Set(uses.map((one) => (one.attempt > 1 ? `${one.point}/${one.attempt}` : one.point)))]
  return points.length > 0 ? `point ${points.join(', ')}` : 'not used here'
}

/** Section 8: batches used or refused here, with expiry, storage, certificate and what they went into. */
export function materialsBlocks(context: DossierContext): Block[] {
  const streams = [...context.batches.keys()].filter((stream) => usesOf(context, stream).length > 0)
  if (streams.length === 0) return [paragraph('No batch was used or refused.', 'not-proven')]
  const rows = streams.flatMap((stream): Cell[][] => {
    const batch = context.batches.get(stream)
    if (!batch) return []
    const uses = usesOf(context, stream)
    const { received } = batch
    const storage =
      received.storageMin || received.storageMax
        ? [received.storageMin, received.storageMax].flatMap((one) => (one ? [showReadingUnit(one)] : [])).join(' to ')
        : 'no log'
    const into = uses
      .map((one) =>
        [
          one.role,
          one.into,
          one.amount && `${showDecimal(one.amount)} ${one.amount.unit}`,
          `point ${one.attempt > 1 ? `${one.point}/${one.attempt}` : one.point}`,
          shortMoment(one.at),
        ]
          .filter(Boolean)
          .join(' '),
      )
      .join('\n')
    const marks = [
      batch.isQuarantined ? 'quarantined' : '',
      batch.recalled ? `recalled ${batch.recalled.observedAt.slice(0, 10)}: ${batch.recalled.body.reason}` : '',
    ]
      .filter(Boolean)
      .join('; ')
    return [
      [
        head(batch.number),
        cell(`${received.product}${received.gtin ? `\nGTIN ${received.gtin}` : ''}`),
        cell(`${batch.expiresOn ?? 'none'}${received.expiryAsLabelled ? `\nlabel ${received.expiryAsLabelled}` : ''}`),
        cell(received.certificate ?? 'MISSING', received.certificate ? 'ink' : 'fail'),
        cell(storage),
        { spans: [{ text: into }, ...(marks ? [strong(`\n${marks}`, 'in-question')] : [])] },
      ],
    ]
  })
  return [
    {
      kind: 'table',
      sizePt: 7.2,
      columns: ['Batch', 'Item', 'Use by', 'Certificate', 'Stored', 'Used, into what'].map((title) => ({ title })),
      rows,
    },
  ]
}

/** Section 9: instruments with the certificate in force on the days of use, checks before and after, and whether one was found wrong later. */
export function instrumentsBlocks(context: DossierContext): Block[] {
  const streams = [...context.instruments.keys()].filter((stream) => usesOf(context, stream).length > 0)
  if (streams.length === 0) return [paragraph('No instrument was used.', 'not-proven')]
  const rows = streams.flatMap((stream): Cell[][] => {
    const one = context.instruments.get(stream)
    if (!one) return []
    const days = [...new Set(usesOf(context, stream).map((use) => dayOf(use.at)))].sort()
    const certificates = one.certificates.map(
      ({ body }) =>
        `${body.certificate}${body.calibratedOn ? `, ${body.calibratedOn}` : ''} to ${body.dueOn}${body.laboratory ? `, ${body.laboratory}` : ''}${body.range ? `, ${showDecimal(body.range.min)} to ${showDecimal(body.range.max)} ${showUnit(body.range.unit)}` : ''}`,
    )
    const checks = one.checks
      .filter((check) => days.includes(dayOf(check.observedAt)))
      .map(
        ({ observedAt, body }) =>
          `${shortMoment(observedAt)} ${body.coverage}: ${showReadingUnit(body.reference)} read ${showReadingUnit(body.read)}, ${body.result}`,
      )
    const wrong = one.foundWrong
      .map(
        (fact) =>
          `found wrong ${fact.observedAt.slice(0, 10)}: ${fact.body.error ? `error ${showReadingUnit(fact.body.error)}, ` : ''}${fact.body.how}`,
      )
      .join('; ')
    return [
      [
        head(one.number),
        cell(one.kind),
        cell(certificates.join('\n') || 'MISSING', certificates.length > 0 ? 'ink' : 'fail'),
        cell(days.join('\n')),
        cell(checks.join('\n') || 'none on these days'),
        {
          spans: [{ text: usedSpan(usesOf(context, stream)) }, ...(wrong ? [strong(`\n${wrong}`, 'in-question')] : [])],
        },
      ],
    ]
  })
  return [
    {
      kind: 'table',
      sizePt: 7.2,
      columns: [
        'Instrument',
        'Kind',
        'Certificates, with last day',
        'Days of use',
        'Checks on those days',
        'Used at',
      ].map((title) => ({ title })),
      rows,
    },
  ]
}

/** Section 10: people with what they did here and the qualifications recorded, corrections of one beside what they replaced. */
export function peopleBlocks(context: DossierContext): Block[] {
  const named = [...context.persons.values()]
  const rows = named.flatMap((person): Cell[][] => {
    const uses = context.state.uses.filter((one) => one.of === person.stream)
    const acts = context.facts.filter(
      (fact) => streamKind(fact.stream) === 'repair' && (fact.observedBy === person.id || fact.enteredBy === person.id),
    ).length
    if (uses.length === 0 && acts === 0) return []
    const days = [...new Set(uses.map((one) => dayOf(one.at)))].sort()
    const replaced = new Set(person.qualifications.map((fact) => fact.body.corrects).filter((id) => id !== undefined))
    const qualifications = person.qualifications.map((fact, index) => ({
      text: `${index > 0 ? '\n' : ''}${fact.body.number} ${fact.body.task}${fact.body.geometries ? `, ${fact.body.geometries.join(' + ')}` : ''}, to ${fact.body.validTo}${fact.body.reason ? ` (${fact.body.reason})` : ''}`,
      isStruck: replaced.has(fact.id),
    }))
    return [
      [
        cell(person.name),
        cell(`${person.title}, ${person.party}`),
        { spans: qualifications.length > 0 ? qualifications : [{ text: 'none recorded', tone: 'soft' }] },
        cell(
          uses.length > 0
            ? `${[...new Set(uses.map((one) => one.role))].join(', ')}; ${usedSpan(uses)}`
            : `${acts} entries`,
        ),
        cell(days.join(', ') || '–'),
      ],
    ]
  })
  return [
    {
      kind: 'table',
      sizePt: 7.4,
      columns: ['Name', 'Title, party', 'Qualifications, valid to', 'Acts here', 'Days'].map((title) => ({ title })),
      rows,
    },
    paragraph(
      'A qualification struck through was corrected later; both stay on record. Whether each person was qualified on the day is judged at the points.',
      'soft',
    ),
  ]
}
