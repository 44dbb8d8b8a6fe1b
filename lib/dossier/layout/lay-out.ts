import type { Section } from '../blocks'
import type { FontMetrics } from './font-metrics'
import { Pen } from './pen'
import { placeBlock } from './place-block'
import type { LaidOut } from './placed'

/** Break sections into sheets and place every block. Pure: the same sections and fonts give the same places. */
export function layOut(sections: readonly Section[], metrics: FontMetrics): LaidOut {
  const pen = new Pen(metrics)
  const sectionSheets: { no: string; title: string; sheetNo: number }[] = []
  for (const section of sections) {
    let noted = false
    pen.as('Sect', () => {
      for (const [index, block] of section.blocks.entries()) {
        placeBlock(block, section.blocks[index + 1], pen)
        if (!noted && block.kind !== 'break') {
          sectionSheets.push({ no: section.no, title: section.title, sheetNo: pen.sheetNo })
          noted = true
        }
      }
    })
  }
  return { sheets: pen.sheets.map((items) => ({ items })), sectionSheets, structure: pen.structure.parts }
}
