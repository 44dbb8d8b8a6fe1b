import { SheetNo } from '../facts/transcription-bodies'
import type { Moment } from '../time'

/** Where a tally sheet belongs. */
export type SheetPlace = { repair: string; point: string; attempt: number }

/** The time of printing as a sheet's own mark: `260529-081205`. Two prints of one point are told apart by it. */
export function sheetStamp(printedAt: Moment): string {
  return `${printedAt.slice(2, 10).replaceAll('-', '')}-${printedAt.slice(11, 19).replaceAll(':', '')}`
}

/** The number of a sheet: `MD-0042/11/2/260529-081205`. Null when the stamp is none. */
export function sheetNumber({ repair, point, attempt }: SheetPlace, stamp: string): SheetNo | null {
  if (!/^\d{6}-\d{6}$/.test(stamp)) return null
  const parsed = SheetNo.safeParse(`${repair}/${point}/${attempt}/${stamp}`)
  return parsed.success ? parsed.data : null
}

/** The path at which a sheet is transcribed; what its code holds beside the server's address. It names the sheet and holds no secret. */
export function transcribePath({ repair, point, attempt }: SheetPlace, stamp: string): string {
  return `/repairs/${encodeURIComponent(repair)}/points/${point}/transcribe?attempt=${attempt}&sheet=${stamp}`
}

/** The path within a scanned address that leads to a sheet's transcription; null when the text is no such address. */
export function transcribePathIn(text: string): string | null {
  try {
    const { protocol, pathname, search } = new URL(text)
    const isSheet = /^https?:$/.test(protocol) && /^\/repairs\/[^/]+\/points\/[^/]+\/transcribe$/.test(pathname)
    return isSheet ? pathname + search : null
  } catch (cause) {
    if (cause instanceof TypeError) return null
    throw cause
  }
}
