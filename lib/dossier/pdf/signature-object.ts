import { type PDFContext, type PDFDict, PDFHexString, type PDFRef, PDFString } from 'pdf-lib'

/** Room for the signature: a certificate, a time-stamp token with one more, both with long keys. */
const CONTENTS_BYTES = 12_288
/** Room for the numbers of the byte range with the spaces behind them: files up to 999 GB. */
const RANGE_CHARACTERS = 48

/** The signature's field: a widget without an appearance, named by the page and by the structure. */
export function signatureField(context: PDFContext, page: PDFRef, signature: PDFRef, structParent: number): PDFDict {
  return context.obj({
    Type: 'Annot',
    Subtype: 'Widget',
    FT: 'Sig',
    T: PDFString.of('Signature'),
    TU: PDFHexString.fromText('Signature over the whole of this file'),
    V: signature,
    Rect: [0, 0, 0, 0],
    // printed and locked
    F: 132,
    P: page,
    StructParent: structParent,
  })
}

/** The signature's object around its contents: the text before `<` and behind `>`. @param objectAt offset of the object in the file @param sizeAfter bytes of the file behind the object */
export function signatureText(
  objectNo: number,
  signedAt: Date,
  objectAt: number,
  sizeAfter: number,
): { before: string; after: string } {
  const opening = `${objectNo} 0 obj\n<< /Type /Sig /Filter /Adobe.PPKLite /SubFilter /ETSI.CAdES.detached /M ${PDFString.fromDate(signedAt)} /ByteRange [`
  const closing = '] /Contents '
  const after = ' >>\nendobj\n'
  const start = objectAt + opening.length + RANGE_CHARACTERS + closing.length
  const end = start + 2 + 2 * CONTENTS_BYTES
  const numbers = `0 ${start} ${end} ${after.length + sizeAfter}`
  if (numbers.length > RANGE_CHARACTERS) throw new RangeError('The file is too long for its byte range')
  return { before: `${opening}${numbers.padEnd(RANGE_CHARACTERS)}${closing}`, after }
}

/** Bytes that the contents take in the file, with their brackets. */
export const CONTENTS_LENGTH = 2 + 2 * CONTENTS_BYTES

/** The contents as a string of the file: lower-case hex, then zeros. @throws RangeError when the signature is longer than the room for it */
export function signatureContents(der: Uint8Array): string {
  if (der.length > CONTENTS_BYTES) throw new RangeError(`A signature of ${der.length} bytes does not fit the file`)
  return `<${Buffer.from(der)
    .toString('hex')
    .padEnd(2 * CONTENTS_BYTES, '0')}>`
}
