import { sheetNumber, sheetStamp, transcribePath } from '@/lib/domain/tally/sheet-number'
import { type Moment, showMoment } from '@/lib/domain/time'
import { type CodeRows, drawCode } from '@/lib/dossier/draw-code'
import { baseUrl } from '@/lib/server/runtime/base-url'
import { type CaptureView, loadCaptureView } from './capture-view'
import { loadPointView, type PointView } from './point-view'
import type { ReadingDesk } from './reading-desk'

export type TallyView = {
  point: PointView
  capture: Omit<CaptureView, 'correcting'>
  sheet: string
  printedAt: Moment
  printed: string
  /** The address that the code holds. */
  address: string
  code: CodeRows
}

/** What a tally sheet of a point and attempt is printed from, with a number of its own; null when it is not there to read or nothing says what to ask for. */
export async function loadTallyView(
  reading: ReadingDesk,
  number: string,
  no: string,
  asked: number | null,
): Promise<TallyView | null> {
  const point = await loadPointView(reading, number, no, asked)
  if (!point) return null
  const { attempt } = point.attempt
  const capture = await loadCaptureView(reading, number, no, attempt, null)
  const printedAt = reading.desk.now(point.utcOffset)
  const place = { repair: point.state.number, point: no, attempt }
  const sheet = sheetNumber(place, sheetStamp(printedAt))
  if (!capture || !sheet) return null
  const { correcting: _, ...ground } = capture
  const address = baseUrl().replace(/\/+$/, '') + transcribePath(place, sheetStamp(printedAt))
  return {
    point,
    capture: ground,
    sheet,
    printedAt,
    printed: showMoment(printedAt),
    address,
    code: await drawCode(address),
  }
}
