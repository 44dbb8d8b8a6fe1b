import type { ReadResult } from 'zxing-wasm/reader'

/** What was read from a label: its text as a scanner would hand it over, and how it came in. */
export type ScannedLabel = { text: string; by: 'camera' | 'image file' | 'keyed' }
/** What a person may scan: the symbols of packages, plates and our own labels. */
const FORMATS = ['DataMatrix', 'QRCode', 'Code128', 'EANUPC', 'DataBar', 'DataBarExp', 'Aztec', 'ITF'] as const
/** Longest side in pixels at which a picture is searched: enough for a label, little enough for a phone. */
const LONGEST_SIDE_PX = 2000

/** Reads every symbol in a picture's pixels. */
export type CodeReader = (pixels: ImageData) => Promise<string[]>

/** The reader of symbols. It is loaded, with its program from our own origin, when it is first asked for. @throws when it cannot be loaded */
export async function loadCodeReader(): Promise<CodeReader> {
  const { prepareZXingModule, readBarcodes } = await import('zxing-wasm/reader')
  const program = new URL('../../node_modules/zxing-wasm/dist/reader/zxing_reader.wasm', import.meta.url).href
  await prepareZXingModule({
    overrides: { locateFile: (path: string, from: string) => (path.endsWith('.wasm') ? program : from + path) },
    fireImmediately: true,
  })
  return async (pixels) => {
    // Plain: brackets that the reader would put round identifiers could not be told from brackets in a value.
    const found = await readBarcodes(pixels, {
      formats: [...FORMATS],
      tryHarder: true,
      maxNumberOfSymbols: 12,
      textMode: 'Plain',
    })
    return [...new Set(found.filter((one) => one.isValid).map(scannedText))]
  }
}

/** A symbol's text as a scanner hands it over: GS1 content with the mark that says so. */
export function scannedText(found: Pick<ReadResult, 'text' | 'contentType' | 'symbologyIdentifier'>): string {
  return found.contentType === 'GS1' ? `${found.symbologyIdentifier}${found.text}` : found.text
}

/** The pixels of a picture or of the camera's present frame, no longer than the search needs; null while there is none. */
export function pixelsOf(source: ImageBitmap | HTMLVideoElement, canvas: HTMLCanvasElement): ImageData | null {
  const [width, height] =
    source instanceof HTMLVideoElement ? [source.videoWidth, source.videoHeight] : [source.width, source.height]
  if (width === 0 || height === 0) return null
  const share = Math.min(1, LONGEST_SIDE_PX / Math.max(width, height))
  canvas.width = Math.round(width * share)
  canvas.height = Math.round(height * share)
  const pen = canvas.getContext('2d', { willReadFrequently: true })
  if (!pen) return null
  pen.drawImage(source, 0, 0, canvas.width, canvas.height)
  return pen.getImageData(0, 0, canvas.width, canvas.height)
}
