import type { Block } from '../blocks'
import { leadPt, type Pen } from './pen'
import { BODY_WIDTH_PT, SHEET } from './sheet'

const CODE_PT = 62
const GAP_PT = 10
const TEXT_PT = 7

/** Place what a stranger checks the file by: the code that leads there on the right, the words beside it. */
export function placeSeal(block: Extract<Block, { kind: 'seal' }>, pen: Pen): void {
  const room = BODY_WIDTH_PT - CODE_PT - GAP_PT
  const lines = block.lines.map((spans) => pen.lines(spans, room, TEXT_PT))
  const textPt = lines.flat().length * leadPt(TEXT_PT)
  const heightPt = Math.max(CODE_PT, textPt)
  pen.ensure(heightPt + 8)
  const top = pen.y + 4
  let y = top
  for (const paragraph of lines) {
    pen.as('P', () => {
      for (const line of paragraph) {
        pen.line(line, SHEET.body.left, y, TEXT_PT)
        y += leadPt(TEXT_PT)
      }
    })
  }
  const x = SHEET.body.right - CODE_PT
  pen.as(
    'Figure',
    () => pen.add({ kind: 'squares', x, y: top, sidePt: CODE_PT / block.code.length, rows: block.code }),
    { alt: block.codeAlt, boxPt: [x, top, SHEET.body.right, top + CODE_PT] },
  )
  pen.y = top + heightPt + 5
}
