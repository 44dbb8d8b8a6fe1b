import { type QuantityLine, quantitySheet } from '@/lib/domain/design/quantity-sheet'
import { type Block, type Cell, cell, head, strong } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { equationTable } from './design-sheet'

/** Quantities computed from the design sheet beside what was used, in section 8. Nothing typed on a page enters it. */
export function quantityBlocks(context: DossierContext): Block[] {
  const sheet = quantitySheet(context.state, {})
  return [
    { kind: 'heading', text: 'Quantities: computed, and used' },
    {
      kind: 'table',
      sizePt: 7,
      columns: ['What', 'Computed, with spare or waste', 'Used', 'Used against computed'].map((title) => ({ title })),
      rows: sheet.lines.map((one) => [
        head(one.what),
        neededCell(one),
        cell(one.used),
        cell(one.difference ?? 'not compared', one.difference === null ? 'soft' : 'ink'),
      ]),
    },
    equationTable(sheet.equations),
  ]
}

function neededCell(one: QuantityLine): Cell {
  return one.refusal === null
    ? { spans: [strong(one.needed ?? '')] }
    : { spans: [strong(`not computed: ${one.refusal}`, 'not-proven')] }
}
