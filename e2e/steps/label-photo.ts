import { readFileSync } from 'node:fs'
import sharp from 'sharp'
import { prepareZXingModule, writeBarcode } from 'zxing-wasm/writer'

const program = new Uint8Array(readFileSync('node_modules/zxing-wasm/dist/writer/zxing_writer.wasm')).buffer
prepareZXingModule({ overrides: { wasmBinary: program } })

/** A photo of a label as a phone takes it: a Data Matrix on a box, turned, softened and pressed by JPEG. */
export async function labelPhoto(bracketed: string): Promise<Buffer> {
  const isGs1 = bracketed.startsWith('[')
  const { svg, error } = await writeBarcode(bracketed, {
    format: 'DataMatrix',
    scale: 9,
    options: isGs1 ? 'gs1,forceSquare' : 'forceSquare',
  })
  if (error !== '') throw new Error(error)
  const code = await sharp(Buffer.from(svg)).flatten({ background: '#f3f0e6' }).png().toBuffer()
  const turned = await sharp(code).rotate(8, { background: '#f3f0e6' }).blur(0.8).png().toBuffer()
  return sharp({ create: { width: 1200, height: 900, channels: 3, background: '#b9a884' } })
    .composite([
      {
        input: { create: { width: 760, height: 600, channels: 3, background: '#f3f0e6' } },
        left: 200,
        top: 140,
      },
      { input: turned, left: 380, top: 260 },
    ])
    .jpeg({ quality: 72 })
    .toBuffer()
}
