import { readFileSync, writeFileSync } from 'node:fs'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import { buildDossier, layOutDossier } from '@/lib/dossier/build-dossier'
import { titleBlock } from '@/lib/dossier/layout/title-block'
import { SECTION_TITLES } from '@/lib/dossier/outline'
import { loadFaces } from '@/lib/dossier/pdf/faces'
import { gatherDossier } from '@/lib/server/dossier/gather-dossier'
import { writeReviewDossier } from '@/lib/server/dossier/write-review-dossier'
import { inputByHand, withPhotos } from './input-by-hand'
import { makeJpeg, storeOf } from './jpeg-for-tests'
import { hasPikepdf, hasPreflight, hasProgram, runOutside, runPreflight } from './outside-tools'
import { readSealed } from './read-sealed'
import { REPAIR, type SealedWorld, sealedWorld } from './sealed-world'

let world: SealedWorld
let path: string

beforeAll(async () => {
  world = await sealedWorld()
  path = world.at('copy.pdf')
  const written = await writeReviewDossier(world.store, world.store.tenant, REPAIR, path)
  if (!written.ok) throw new Error(written.error.code)
})
afterAll(() => world.remove())

/** The file with one byte of its first page changed. */
function changed(): string {
  const bytes = readFileSync(path)
  const at = bytes.length >> 1
  bytes[at] = (bytes[at] ?? 0) ^ 1
  writeFileSync(world.at('changed.pdf'), bytes)
  return world.at('changed.pdf')
}

describe.skipIf(!hasProgram('pdfsig'))('pdfsig [needs pdfsig]', () => {
  test('calls the signature valid, over the whole document', () => {
    const { output } = runOutside('pdfsig', [path])
    expect(output).toContain('Signature Validation: Signature is Valid.')
    expect(output).toContain('Signature Type: ETSI.CAdES.detached')
    expect(output).toContain('Total document signed')
  })
  test('sees one changed bit', () => {
    expect(runOutside('pdfsig', [changed()]).output).toContain('Digest Mismatch')
  })
})

test.skipIf(!hasProgram('openssl'))(
  'openssl verifies the signature as CAdES over the byte ranges [needs openssl]',
  () => {
    const file = readSealed(path)
    const [signature, content] = [world.at('signature.der'), world.at('signed.bin')]
    writeFileSync(signature, file.signature)
    writeFileSync(content, file.signed)
    runOutside('openssl', ['pkcs7', '-inform', 'DER', '-in', signature, '-print_certs', '-out', world.at('signer.pem')])
    const verify = (): number =>
      runOutside('openssl', [
        ...['cms', '-verify', '-cades', '-CAfile', world.at('signer.pem'), '-purpose', 'any', '-binary'],
        ...['-inform', 'DER', '-in', signature, '-content', content, '-out', '/dev/null'],
      ]).status
    expect(verify()).toBe(0)
    file.signed[1000] = (file.signed[1000] ?? 0) ^ 1
    writeFileSync(content, file.signed)
    expect(verify()).not.toBe(0)
  },
)

test.skipIf(!hasProgram('qpdf'))('qpdf finds nothing wrong with the syntax [needs qpdf]', () => {
  const { status, output } = runOutside('qpdf', ['--check', path])
  expect(output).toContain('No syntax or stream encoding errors found')
  expect(status).toBe(0)
})

describe.skipIf(!hasPikepdf)('our list of the rules of PDF/A-3u [needs python3-pikepdf]', () => {
  test('holds; no validator of that part was run', () => {
    expect(runOutside('/usr/bin/python3', ['test/dossier/pdfa3_rules.py', path])).toEqual({ status: 0, output: '' })
  })
  test('is broken by a file without attachments and signature', async () => {
    await buildDossier(inputByHand(), storeOf({}), world.at('plain.pdf'), undefined, { conformance: 'PDF/A-1b' })
    expect(runOutside('/usr/bin/python3', ['test/dossier/pdfa3_rules.py', world.at('plain.pdf')]).status).not.toBe(0)
  })
})

describe.skipIf(!hasPreflight)('PDFBox Preflight [needs libpdfbox2-java]', () => {
  test('calls the PDF/A-1b twin of a dossier valid', { timeout: 120_000 }, async () => {
    const gathered = await gatherDossier(
      world.store,
      world.store.tenant,
      REPAIR,
      { kind: 'for review' },
      world.store.now(),
    )
    if (!gathered) throw new Error('no repair')
    const twin = world.at('twin.pdf')
    await buildDossier(gathered.input, world.store.photos, twin, undefined, { conformance: 'PDF/A-1b' })
    const { status, output } = runPreflight(twin)
    expect(output).toContain('is a valid PDF/A-1b file')
    expect(status).toBe(0)
  })
  test('refuses what claims another part', async () => {
    const pictures = [await makeJpeg('#a03020')]
    const store = storeOf(Object.fromEntries(pictures.map((one) => [one.sha256, one.bytes])))
    await buildDossier(withPhotos(inputByHand(), '16', pictures), store, world.at('part3.pdf'))
    expect(runPreflight(world.at('part3.pdf')).output).toContain('is not a valid PDF/A-1b file')
  })
})

test.skipIf(!hasProgram('pdfinfo'))(
  'a reader who hears the sheets gets headings, tables and pictures in order [needs pdfinfo]',
  () => {
    const { output } = runOutside('pdfinfo', ['-struct', path])
    const kinds = output.split('\n').map((line) => /^ *(\w+)/.exec(line)?.[1] ?? '')
    const countOf = (kind: string): number => kinds.filter((one) => one === kind).length
    expect(kinds.slice(0, 4)).toEqual(['Document', 'Sect', 'P', 'H1'])
    expect([countOf('H1'), countOf('Sect')]).toEqual([SECTION_TITLES.length, SECTION_TITLES.length])
    for (const kind of ['H2', 'H3', 'Table', 'TR', 'TH', 'TD', 'Figure', 'P']) expect(countOf(kind)).toBeGreaterThan(8)
  },
)

test('frame and title block of a sheet are not spoken; everything else that is text is', async () => {
  const { metrics } = await loadFaces()
  const laidOut = layOutDossier(inputByHand(), new Set(), metrics)
  const texts = laidOut.sheets.flatMap((sheet) => sheet.items.filter((one) => one.kind === 'text'))
  const untagged = texts.filter((one) => !one.tag).map((one) => one.text)
  const heads = texts.filter((one) => one.tag?.type === 'TH').map((one) => one.text)
  // what is left is the heads that tables repeat on their next sheet
  expect(untagged.filter((text) => !heads.includes(text))).toEqual([])
  expect(titleBlock({ repair: 'T', line: 'L', issue: 'i', note: 'n' }, 1, 2, metrics).some((one) => one.tag)).toBe(
    false,
  )
})

test.skipIf(!hasProgram('pdftoppm'))(
  'the code on the cover leads to the page that checks the file [needs pdftoppm]',
  async () => {
    runOutside('pdftoppm', ['-r', '150', '-f', '1', '-l', '1', '-singlefile', '-png', path, world.at('cover')])
    const wasm = readFileSync('node_modules/zxing-wasm/dist/reader/zxing_reader.wasm')
    prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasm).buffer } })
    const { data, info } = await sharp(world.at('cover.png')).ensureAlpha().raw().toBuffer({ resolveWithObject: true })
    const picture = { data: new Uint8ClampedArray(data), width: info.width, height: info.height } as ImageData
    const found = await readBarcodes(picture, { formats: ['QRCode'] })
    expect(found.map((one) => one.text)).toEqual(['http://localhost:3000/check'])
  },
)
