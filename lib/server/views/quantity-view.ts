import { type AskedTexts, type QuantitySheet, quantitySheet } from '@/lib/domain/design/quantity-sheet'
import type { ReadingDesk } from './reading-desk'
import { loadRepairView, type RepairView } from './repair-view'

export type QuantityView = RepairView & { sheet: QuantitySheet }

/** The quantity sheet of a repair with what was typed on its page; null when the repair is not there to read. */
export async function loadQuantityView(
  reading: ReadingDesk,
  number: string,
  asked: AskedTexts,
): Promise<QuantityView | null> {
  const view = await loadRepairView(reading, number)
  return view ? { ...view, sheet: quantitySheet(view.state, asked) } : null
}
