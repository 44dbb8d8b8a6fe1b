import { readFileSync } from 'node:fs'
import sharp from 'sharp'
import { beforeAll, describe, expect, test } from 'vitest'
import { prepareZXingModule as prepareReader, readBarcodes } from 'zxing-wasm/reader'
import { prepareZXingModule as prepareWriter, writeBarcode } from 'zxing-wasm/writer'
import { scannedText } from '@/app/_parts/label-codes'
import { drawSymbol, type LabelSymbol } from '@/app/_parts/label-drawing'
import { labelLayout, labelSizeOf } from '@/app/_parts/label-size'
import { StreamId } from '@/lib/domain/facts/fact'
import { batchLabel, instrumentLabel, type LabelContent, repairLabel } from '@/lib/domain/labels/label-content'
import { readLabel } from '@/lib/domain/labels/read-label'

const program = (kind: 'reader' | 'writer') =>
  new Uint8Array(readFileSync(`node_modules/zxing-wasm/dist/${kind}/zxing_${kind}.wasm`)).buffer
beforeAll(() => {
  prepareReader({ overrides: { wasmBinary: program('reader') } })
  prepareWriter({ overrides: { wasmBinary: program('writer') } })
})

/** Draw the symbol as it is printed, in a picture of so many pixels a module, and read the picture. */
async function readBack(content: LabelContent, format: LabelSymbol, modulePx = 4): Promise<string[]> {
  const drawn = await drawSymbol(content.symbol, format, writeBarcode)
  if (!drawn) throw new Error('the text does not fit')
  const [width, height] = [drawn.widthModules * modulePx, drawn.heightModules * modulePx]
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${drawn.widthModules} ${drawn.heightModules}"><path d="${drawn.path}"/></svg>`
  const picture = await sharp(Buffer.from(svg))
    .flatten({ background: '#fff' })
    .extend({ top: 30, bottom: 30, left: 30, right: 30, background: '#fff' })
    .jpeg({ quality: 70 })
    .toBuffer()
  return (await readBarcodes(new Uint8Array(picture), { tryHarder: true, textMode: 'Plain' })).map(scannedText)
}

const BATCH = {
  stream: StreamId.parse('batch:RS-884'),
  number: 'RS-884',
  product: 'Resin',
  gtin: '09521234000013',
  madeOn: '2025-11-30',
  expiresOn: '2026-11-30',
}
const INSTRUMENT = { stream: StreamId.parse('instrument:HD-02'), number: 'HD-02', kind: 'durometer', serial: 'S7741' }
const REPAIR = {
  stream: StreamId.parse('repair:MD-0041'),
  number: 'MD-0041',
  line: 'MDW-200',
  place: 'F-3',
  label: 'LBL-0041',
  nextInspectionOn: null,
  restrictions: ['No welding.'],
}

describe.each(['DataMatrix', 'QRCode'] as const)('a label printed with a %s', (format) => {
  test.each([
    ['a batch', batchLabel(BATCH), { '01': '09521234000013', '11': '251130', '17': '261130', '10': 'RS-884' }],
    [
      'a batch without article and dates, with brackets in its number',
      batchLabel({ ...BATCH, number: 'R(1)/7', gtin: null, madeOn: null, expiresOn: null }),
      { '10': 'R(1)/7' },
    ],
    [
      'an instrument with an asset number',
      instrumentLabel({ ...INSTRUMENT, asset: '952123HD02' }),
      { '8004': '952123HD02' },
    ],
    ['a repair with an asset number', repairLabel({ ...REPAIR, asset: '952123R/41' }), { '8004': '952123R/41' }],
  ])('reads back as printed: %s', async (_name, content, elements) => {
    expect(content.symbol.isGs1).toBe(true)
    const texts = await readBack(content, format)
    expect(texts.map((text) => readLabel(text, 2026))).toMatchObject([{ ok: true, value: { kind: 'gs1', elements } }])
  })

  test.each([
    ['an instrument without an asset number', instrumentLabel({ ...INSTRUMENT, asset: null }), 'instrument:HD-02'],
    ['a repair without an asset number', repairLabel({ ...REPAIR, asset: null }), 'repair:MD-0041'],
    ['a batch whose number is too long for GS1', batchLabel({ ...BATCH, number: 'R'.repeat(21) }), 'batch:RS-884'],
    ['a batch whose number holds a space', batchLabel({ ...BATCH, number: 'RS 884' }), 'batch:RS-884'],
    ['a batch whose number would read as a field', batchLabel({ ...BATCH, number: 'A(21)B' }), 'batch:RS-884'],
  ])('carries our own number: %s', async (_name, content, stream) => {
    expect(content.symbol.isGs1).toBe(false)
    const [text = ''] = await readBack(content, format)
    expect(readLabel(text, 2026)).toEqual({ ok: true, value: { kind: 'own', stream } })
  })

  test('a text that no symbol holds is not drawn', async () => {
    expect(await drawSymbol({ text: 'x'.repeat(8000), isGs1: false }, format, writeBarcode)).toBeNull()
  })
})

describe('the face of a label', () => {
  test('its standing words give no leave, and a repair shows its restrictions', () => {
    expect(batchLabel(BATCH).standing).toMatch(/gives no leave/)
    expect(repairLabel({ ...REPAIR, asset: null }).standing).toMatch(/^No welding\. .*gives no leave/)
    for (const content of [batchLabel(BATCH), repairLabel({ ...REPAIR, asset: null })])
      expect(JSON.stringify(content)).not.toMatch(/safe/i)
  })

  test.each([
    ['70', '37', { widthMm: 70, heightMm: 37 }],
    ['70.5', '20', { widthMm: 70.5, heightMm: 20 }],
    ['300', '300', { widthMm: 300, heightMm: 300 }],
    ['19.9', '37', null],
    ['301', '37', null],
    ['70', '', null],
    ['70,5', '37', null],
    ['7e1', '37', null],
  ])('%s by %s mm is %j', (width, height, size) => {
    expect(labelSizeOf(width, height)).toEqual(size)
  })

  test.each([
    [50, 25],
    [70, 37],
    [100, 50],
    [105, 74],
    [40, 100],
  ])('on %d by %d mm symbol and type stay inside', (widthMm, heightMm) => {
    const lines = [
      { text: 'Batch RS-884', scale: 1.5 },
      ...Array.from({ length: 4 }, () => ({ text: 'a line of words', scale: 1 })),
    ]
    const { padMm, symbolMm, typeMm } = labelLayout({ widthMm, heightMm }, lines)
    expect(symbolMm).toBeLessThanOrEqual(Math.min(widthMm / 2, heightMm) - padMm)
    expect(5.5 * typeMm * 1.22).toBeLessThanOrEqual(heightMm - 2 * padMm)
    expect(typeMm).toBeGreaterThan(0.8)
  })
})
