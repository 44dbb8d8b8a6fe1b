import type { LabelContent } from '@/lib/domain/labels/label-content'
import { squaresPath } from '@/lib/domain/labels/squares-path'

export type LabelSymbol = 'DataMatrix' | 'QRCode'
/** A drawn symbol: path data in modules, so that it prints sharp at any size, and its sides with the quiet zone. */
export type DrawnSymbol = { path: string; widthModules: number; heightModules: number }

/** Empty modules round a symbol. @source ISO/IEC 16022 (one, Data Matrix), ISO/IEC 18004 (four, QR). Confidence high. */
const QUIET_MODULES: Record<LabelSymbol, number> = { DataMatrix: 1, QRCode: 4 }

/** The writer's program from our own origin; nothing is asked of another host. */
async function loadWriter() {
  const { prepareZXingModule, writeBarcode } = await import('zxing-wasm/writer')
  const program = new URL('../../node_modules/zxing-wasm/dist/writer/zxing_writer.wasm', import.meta.url).href
  await prepareZXingModule({
    overrides: { locateFile: (path: string, from: string) => (path.endsWith('.wasm') ? program : from + path) },
    fireImmediately: true,
  })
  return writeBarcode
}

/** What the writer gives back: dark and light modules, a byte each. */
type Symbol = { data: Uint8ClampedArray | Uint8Array; width: number; height: number }
export type WriteSymbol = (
  text: string,
  options: { format: LabelSymbol; options: string },
) => Promise<{ symbol: Symbol; error: string }>

/**
 * Draw the symbol of a label: GS1 content with its function characters, or plain text.
 * @returns null when the text does not fit the symbol
 */
export async function drawSymbol(
  { text, isGs1 }: LabelContent['symbol'],
  format: LabelSymbol,
  write?: WriteSymbol,
): Promise<DrawnSymbol | null> {
  const writeSymbol: WriteSymbol = write ?? (await loadWriter())
  const { symbol, error } = await writeSymbol(text, { format, options: isGs1 ? 'gs1,forceSquare' : 'forceSquare' })
  if (error !== '') return null
  const quiet = QUIET_MODULES[format]
  const path = squaresPath(symbol, (x, y) => symbol.data[y * symbol.width + x] === 0, quiet)
  return { path, widthModules: symbol.width + 2 * quiet, heightModules: symbol.height + 2 * quiet }
}
