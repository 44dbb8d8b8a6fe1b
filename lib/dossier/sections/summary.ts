import { type Block, cell, head, paragraph, plain, singleLine } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { BUILT_COLUMNS, builtRows, designRows } from './built-rows'
import { placeText, statusSign } from './cover'
import { missingByPoint } from './missing-by-point'

/** Section 3: one page that answers what a client asks first. */
export function summaryBlocks(context: DossierContext): Block[] {
  const { state } = context
  const { acceptance } = state
  const conditions =
    acceptance?.openConditions.map((one) => [
      head('condition'),
      cell(`${one.text} (${context.personName(one.owner)}, due ${one.dueOn})`),
    ]) ?? []
  const open = [...conditions, ...missingByPoint(context)]
  return [
    singleLine([
      ['Status', statusSign(state).text],
      ['Place', placeText(state)],
      ['Life', acceptance ? `${acceptance.lifeYears} yr, ends ${acceptance.lifeEndsOn}` : 'not accepted'],
      [
        'Next inspection',
        acceptance ? `${acceptance.nextInspectionOn}${acceptance.isOverdue ? ', OVERDUE' : ''}` : 'not accepted',
      ],
      ['Restrictions', acceptance?.fact.body.restrictions.join('; ') || 'none stated'],
      ['Line, class', `${state.opened.body.line}, ${state.opened.body.className ?? 'no class stated'}`],
    ]),
    { kind: 'heading', text: 'Design and as built' },
    ...(state.design
      ? [
          {
            kind: 'table',
            columns: [
              { title: 'What' },
              { title: `Design sheet ${state.design.sheetNo} rev ${state.design.revision}` },
              { title: 'As built' },
            ],
            rows: designRows(context),
            sizePt: 7,
          } as const,
        ]
      : [paragraph('No design sheet recorded.', 'not-proven')]),
    { kind: 'heading', text: 'Criteria the repair stands on, latest attempts' },
    ...(builtRows(context).length > 0
      ? [{ kind: 'table', columns: BUILT_COLUMNS, rows: builtRows(context), sizePt: 7 } as const]
      : [paragraph('None judged yet.', 'not-proven')]),
    { kind: 'heading', text: 'Nonconformances' },
    ...(state.nonconformances.length > 0
      ? [
          {
            kind: 'table',
            columns: [{ title: 'Number' }, { title: 'What' }, { title: 'State' }, { title: 'Disposition' }],
            rows: state.nonconformances.map((one) => [
              head(one.number),
              cell(one.raised.body.title),
              cell(one.state),
              cell(one.proposal ? `${one.proposal.body.disposition}: ${one.proposal.body.what}` : 'none proposed'),
            ]),
            sizePt: 7,
          } as const,
        ]
      : [paragraph('None raised.')]),
    { kind: 'heading', text: 'Open items' },
    ...(open.length > 0
      ? [
          {
            kind: 'paragraph',
            sizePt: 7.4,
            spans: open.flatMap(([name, text]) => [
              ...(name ? name.spans.map((one) => ({ ...one, face: 'bold' as const })) : []),
              plain('  '),
              ...(text?.spans ?? []),
              plain('   '),
            ]),
          } as const,
        ]
      : [paragraph('None.')]),
  ]
}
