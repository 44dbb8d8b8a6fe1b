import { createHash } from 'node:crypto'
import { deflateSync } from 'node:zlib'

export type AttachedByHand = { name: string; bytes: Uint8Array }
export type PhotoByHand = { bytes: Uint8Array }

/** How the file is put together; a test changes one of these. */
export type PdfParts = {
  attachments: AttachedByHand[]
  photos: PhotoByHand[]
  /** The DER over the digest of all that is covered. */
  sign(contentSha256: Uint8Array): Uint8Array
  /** Further objects, as values. */
  further?: string[]
  hexOf?: (der: Uint8Array, room: number) => string
}

/** Number of the first photo's object in a file made here. */
export const FIRST_PHOTO = 7
const ROOM_BYTES = 3200

/** A small dossier file: one empty sheet, photos, attachments, signature. Object numbers: 1 catalog, 2 pages, 3 sheet, 4 names, 5 field, 6 signature, then photos, then attachments. */
export function pdfByHand({ attachments, photos, sign, further = [], hexOf = lowerHex }: PdfParts): Uint8Array {
  const firstFile = FIRST_PHOTO + photos.length
  const specification = (index: number): number => firstFile + 2 * index + 1
  const specifications = attachments.map((_, index) => `${specification(index)} 0 R`)
  const names = attachments.map((one, index) => `(${one.name}) ${specification(index)} 0 R`)
  const objects: Buffer[] = [
    text(
      `<< /Type /Catalog /Pages 2 0 R /Names << /EmbeddedFiles 4 0 R >> /AF [${specifications.join(' ')}] /AcroForm << /Fields [5 0 R] /SigFlags 3 >> >>`,
    ),
    text('<< /Type /Pages /Kids [3 0 R] /Count 1 >>'),
    text('<< /Type /Page /Parent 2 0 R /MediaBox [0 0 595 842] /Resources << >> /Annots [5 0 R] >>'),
    text(`<< /Names [${names.join(' ')}] >>`),
    text('<< /Type /Annot /Subtype /Widget /FT /Sig /T (Signature) /V 6 0 R /Rect [0 0 0 0] /P 3 0 R >>'),
    text(
      `<< /Type /Sig /Filter /Adobe.PPKLite /SubFilter /ETSI.CAdES.detached /ByteRange [${' '.repeat(40)}] /Contents <${'0'.repeat(2 * ROOM_BYTES)}> >>`,
    ),
    ...photos.map(({ bytes }) =>
      streamOf(
        '/Type /XObject /Subtype /Image /Width 1 /Height 1 /ColorSpace /DeviceGray /BitsPerComponent 8 /Filter /DCTDecode',
        bytes,
      ),
    ),
    ...attachments.flatMap(({ name, bytes }, index) => [
      streamOf(
        `/Type /EmbeddedFile /Subtype /text#2Fplain /Filter /FlateDecode /Params << /Size ${bytes.length} >>`,
        deflateSync(bytes),
      ),
      text(
        `<< /Type /Filespec /F (${name}) /UF (${name}) /AFRelationship /Source /EF << /F ${firstFile + 2 * index} 0 R /UF ${firstFile + 2 * index} 0 R >> >>`,
      ),
    ]),
    ...further.map(text),
  ]
  return signed(assemble(objects), sign, hexOf)
}

function text(value: string): Buffer {
  return Buffer.from(value, 'latin1')
}

function streamOf(entries: string, bytes: Uint8Array): Buffer {
  return Buffer.concat([text(`<< ${entries} /Length ${bytes.length} >>\nstream\n`), bytes, text('\nendstream')])
}

/** Head, objects one after the other, table, trailer. */
function assemble(objects: readonly Buffer[]): Buffer {
  const parts = [text('%PDF-1.7\n%\x81\x81\x81\x81\n')]
  const offsets: number[] = []
  let at = parts[0]?.length ?? 0
  for (const [index, value] of objects.entries()) {
    const object = Buffer.concat([text(`${index + 1} 0 obj\n`), value, text('\nendobj\n')])
    offsets.push(at)
    at += object.length
    parts.push(object)
  }
  const rows = offsets.map((offset) => `${String(offset).padStart(10, '0')} 00000 n \n`)
  parts.push(
    text(
      `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${rows.join('')}trailer\n<< /Size ${objects.length + 1} /Root 1 0 R >>\nstartxref\n${at}\n%%EOF\n`,
    ),
  )
  return Buffer.concat(parts)
}

/** Fill in byte range and signature. */
function signed(file: Buffer, sign: PdfParts['sign'], hexOf: NonNullable<PdfParts['hexOf']>): Uint8Array {
  const from = file.indexOf('/Contents <') + '/Contents '.length
  const to = from + 2 + 2 * ROOM_BYTES
  file.write(
    `0 ${from} ${to} ${file.length - to}`.padEnd(40),
    file.indexOf('/ByteRange [') + '/ByteRange ['.length,
    'latin1',
  )
  const digest = createHash('sha256').update(file.subarray(0, from)).update(file.subarray(to)).digest()
  file.write(hexOf(sign(digest), ROOM_BYTES), from + 1, 'latin1')
  return new Uint8Array(file)
}

/** The DER in lower-case hex with zeros behind it. */
export function lowerHex(der: Uint8Array, room: number): string {
  return Buffer.from(der)
    .toString('hex')
    .padEnd(2 * room, '0')
}
