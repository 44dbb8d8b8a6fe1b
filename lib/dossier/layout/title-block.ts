import type { FontMetrics } from './font-metrics'
import { Pen } from './pen'
import type { Placed } from './placed'
import { SHEET } from './sheet'

export type TitleBlock = { repair: string; line: string; issue: string; note: string }

/** Frame and title block of one sheet: dossier of repair, line, issue, sheet n of m. A long text is set smaller until it fits. */
export function titleBlock(block: TitleBlock, sheetNo: number, sheetCount: number, metrics: FontMetrics): Placed[] {
  const { frame, titleBlockHeightPt } = SHEET
  const pen = new Pen(metrics, false)
  const top = frame.bottom - titleBlockHeightPt
  pen.add(
    {
      kind: 'box',
      x: frame.left,
      y: frame.top,
      widthPt: frame.right - frame.left,
      heightPt: frame.bottom - frame.top,
      fill: null,
      edge: 'ink',
    },
    { kind: 'line', x1: frame.left, y1: top, x2: frame.right, y2: top, widthPt: 1.1, tone: 'ink' },
  )
  const width = frame.right - frame.left
  const cells = [
    ['Dossier of repair', block.repair, 0.27],
    ['Line', block.line, 0.28],
    ['Issue', block.issue, 0.28],
    ['Sheet', `${sheetNo} of ${sheetCount}`, 0.17],
  ] as const
  let x = frame.left
  for (const [index, [name, value, share]] of cells.entries()) {
    if (index > 0) pen.add({ kind: 'line', x1: x, y1: top, x2: x, y2: frame.bottom, widthPt: 0.8, tone: 'ink' })
    const room = share * width - 14
    pen.add({ kind: 'text', x: x + 7, y: top + 12, text: name, face: 'regular', sizePt: 7, tone: 'soft' })
    const sizePt =
      [11, 9.5, 8, 7].find(
        (size) => pen.lines([{ text: value, face: 'bold' }], room, size).length <= (size < 9.5 ? 2 : 1),
      ) ?? 6
    for (const [at, line] of pen
      .lines([{ text: value, face: 'bold' }], room, sizePt)
      .slice(0, 3)
      .entries())
      pen.line(line, x + 7, top + 16 + at * sizePt * 1.2, sizePt)
    x += share * width
  }
  if (block.note)
    pen.line(
      pen.lines([{ text: block.note, tone: 'soft' }], width, 6.4)[0] ?? { runs: [], widthPt: 0 },
      frame.left,
      frame.bottom + 3,
      6.4,
    )
  return pen.sheets[0] ?? []
}
