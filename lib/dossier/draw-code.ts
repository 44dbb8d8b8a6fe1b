import { readFile } from 'node:fs/promises'
import { prepareZXingModule, writeBarcode } from 'zxing-wasm/writer'
import { installedFile } from './installed-file'

/** A square code as rows of squares, true where dark. */
export type CodeRows = readonly (readonly boolean[])[]

let prepared: Promise<void> | null = null

/** The QR code of a text, without its quiet margin. @throws Error when the text is too long for one or the drawing library is not installed */
export async function drawCode(text: string): Promise<CodeRows> {
  prepared ??= prepare().catch((error: unknown) => {
    prepared = null
    throw error
  })
  await prepared
  const { symbol, error } = await writeBarcode(text, { format: 'QRCode', addQuietZones: false, scale: 1 })
  if (error) throw new Error(`No QR code of ${text}: ${error}`)
  return Array.from({ length: symbol.height }, (_, y) =>
    Array.from({ length: symbol.width }, (_, x) => symbol.data[y * symbol.width + x] === 0),
  )
}

/** The library would fetch its code from elsewhere; here it is read from the installation. */
async function prepare(): Promise<void> {
  const path = installedFile('node_modules', 'zxing-wasm', 'dist', 'writer', 'zxing_writer.wasm')
  const bytes = await readFile(/*turbopackIgnore: true*/ path)
  prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(bytes).buffer } })
}
