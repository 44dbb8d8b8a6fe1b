import type { ComparedRow } from '@/lib/domain/design/compare-design'
import { isApproved } from '@/lib/domain/design/design-approval'
import type { DesignFigure } from '@/lib/domain/design/design-figure'
import { type DesignSheet, designSheet, FORMS_TO_SETTLE } from '@/lib/domain/design/design-sheet'
import type { Equation } from '@/lib/domain/design/equation'
import { sensitivityPicture } from '@/lib/domain/design/sensitivity-picture'
import { inputsBySource } from '@/lib/domain/design/source-words'
import { showMoment } from '@/lib/domain/time'
import { type Block, type Cell, cell, head, paragraph, plain, type Sign, strong } from '../blocks'
import type { DossierContext } from '../dossier-context'

const SIZE_PT = 7

/** Section 5, before the records: every equation with its numbers, what governs, recorded against computed, the plot, and who approved which revision. */
export function designSheetBlocks(context: DossierContext): Block[] {
  const sheet = designSheet(context.state)
  if (sheet.revisions.length === 0)
    return [paragraph('No design sheet is recorded: nothing is computed.', 'not-proven')]
  return [
    { kind: 'heading', text: 'Design computation' },
    {
      kind: 'paragraph',
      spans: [
        strong(sheet.governing.text, sheet.governing.isKnown ? 'ink' : 'not-proven'),
        plain(
          ` ${sheet.choices.edition ? `By ${sheet.choices.edition}.` : 'No edition of a standard is named.'} ${FORMS_TO_SETTLE} Recomputed from the records at this dossier’s time.`,
        ),
      ],
    },
    equationTable(sheet.equations),
    { kind: 'heading', text: 'What went into the equations' },
    ...inputTables(sheet.inputs, context),
    { kind: 'heading', text: 'Recorded design against computed' },
    comparedTable(sheet.compared),
    ...sheet.findings.map((one) => paragraph(one, 'fail')),
    ...(sheet.chosenBecause ? [paragraph(`Why more than the computed is chosen: ${sheet.chosenBecause}`)] : []),
    ...plot(sheet),
    { kind: 'heading', text: 'Revisions of the design sheet and their approval' },
    approvalTable(sheet, context),
  ]
}

/** Equations as a table: in symbols, with the numbers, results, source and confidence. Shared with the quantity sheet. */
export function equationTable(equations: readonly Equation[]): Block {
  return {
    kind: 'table',
    sizePt: SIZE_PT,
    columns: ['Equation', 'In symbols, and with the numbers put in', 'Result', 'Source and confidence'].map(
      (title) => ({
        title,
      }),
    ),
    rows: equations.map((one) => [head(one.title), formCell(one), resultCell(one), sourceCell(one)]),
  }
}

function formCell(one: Equation): Cell {
  const put = one.put && one.put !== one.formula ? [plain(`\n${one.put}`, 'soft')] : []
  const notes = one.notes.length > 0 ? [plain(`\n${one.notes.join(' ')}`, 'soft')] : []
  return { spans: [plain(one.formula), ...put, ...notes] }
}

function resultCell(one: Equation): Cell {
  if (one.refusal !== null) return { spans: [strong(`not computed: ${one.refusal}`, 'not-proven')] }
  return { spans: [strong(one.results.map((result) => unbroken(`${result.symbol} = ${result.text}`)).join('\n'))] }
}

function sourceCell(one: Equation): Cell {
  return cell(`${one.source}. Confidence ${one.confidence}.${one.settle ? ` ${one.settle}` : ''}`, 'soft')
}

/** The figures of equations under the record or clause that each comes from, two to a row. */
function inputTables(inputs: readonly (DesignFigure & { key: string })[], context: DossierContext): Block[] {
  return inputsBySource(inputs, context.personName).flatMap((group): Block[] => {
    const half = Math.ceil(group.inputs.length / 2)
    return [
      { kind: 'heading', text: `From: ${group.words}`, isMinor: true },
      {
        kind: 'table',
        sizePt: SIZE_PT,
        isHeadless: true,
        columns: Array.from({ length: group.inputs.length > 1 ? 6 : 3 }, () => ({ title: '' })),
        rows: group.inputs
          .slice(0, half)
          .map((one, at) => [
            ...inputCells(one),
            ...(group.inputs.length > 1 ? inputCells(group.inputs[half + at]) : []),
          ]),
      },
    ]
  })
}

function inputCells(one: DesignFigure | undefined): Cell[] {
  if (!one) return [cell(''), cell(''), cell('')]
  const clause = one.from?.kind === 'specification' ? `, clause ${one.from.clause}, rev ${one.from.revision}` : ''
  return [
    head(one.symbol),
    { spans: [plain(one.label), plain(`${one.note ? `, ${one.note}` : ''}${clause}`, 'soft')] },
    one.value === null ? { spans: [strong('missing', 'not-proven')] } : cell(unbroken(one.shown ?? '')),
  ]
}

/** Text that stays on one line: a figure with its unit. */
function unbroken(text: string): string {
  return text.replaceAll(' ', '\u00a0')
}

const SIGNS: Record<ComparedRow['outcome'], Sign> = {
  'not less': { glyph: 'pass', text: 'not less' },
  'not more': { glyph: 'pass', text: 'not more' },
  less: { glyph: 'fail', text: 'less' },
  more: { glyph: 'fail', text: 'more' },
  'not computed': { glyph: 'not-proven', text: 'not computed' },
}

function comparedTable(rows: readonly ComparedRow[]): Block {
  return {
    kind: 'table',
    sizePt: SIZE_PT,
    columns: ['What', 'Computed or asked', 'As recorded', 'Recorded is'].map((title) => ({ title })),
    rows: rows.map((one) => [
      cell(one.what),
      cell(one.needed),
      cell(one.recorded),
      { spans: [], sign: SIGNS[one.outcome] },
    ]),
  }
}

function plot(sheet: DesignSheet): Block[] {
  if (sheet.sensitivity.every((one) => one.points.length === 0)) return []
  const picture = sensitivityPicture(sheet.sensitivity, sheet.chosenPlies)
  return [{ kind: 'picture', title: picture.title, picture, maxHeightPt: 150 }]
}

function approvalTable(sheet: DesignSheet, context: DossierContext): Block {
  return {
    kind: 'table',
    sizePt: SIZE_PT,
    columns: ['Sheet', 'Recorded', 'Approved by', 'Hold released for the engineer', 'Standing'].map((title) => ({
      title,
    })),
    rows: sheet.revisions.map((one) => [
      head(
        `${one.sheetNo} rev ${one.revision}${one.isInForce ? '' : one.isOverruled ? ', another record governs' : ', superseded'}`,
      ),
      cell(`${showMoment(one.recordedAt)}, ${context.personName(one.recordedBy)}`),
      cell(
        one.approvals
          .map(
            (each) =>
              `${each.name}, ${showMoment(each.at)}${each.state === 'broken' ? ': a correction after it is not covered' : ''}`,
          )
          .join('\n') || 'nobody',
      ),
      cell(
        one.released.map((each) => `${showMoment(each.fact.observedAt)}, ${each.state}`).join('\n') || 'not released',
      ),
      {
        spans: [],
        sign: isApproved(one)
          ? { glyph: 'pass', text: one.isInForce ? 'approved' : 'approved then' }
          : { glyph: 'not-proven', text: 'not approved' },
      },
    ]),
  }
}
