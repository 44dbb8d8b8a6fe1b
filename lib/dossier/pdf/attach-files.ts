import { promisify } from 'node:util'
import { deflate } from 'node:zlib'
import { type PDFContext, PDFHexString, PDFName, type PDFRef, PDFString } from 'pdf-lib'
import type { AttachedFile } from '../manifest'

const deflated: (bytes: Uint8Array, options: { level: number }) => Promise<Buffer> = promisify(deflate)

/**
 * Embed files, given in the order of their names: entries of the catalog for the name tree and for the files associated with the document (PDF/A-3).
 * The manifest is data about the dossier, the rest its source.
 */
export async function attachFiles(
  context: PDFContext,
  files: readonly AttachedFile[],
  date: Date,
): Promise<{ Names: { EmbeddedFiles: PDFRef }; AF: PDFRef[] }> {
  const specifications: PDFRef[] = []
  for (const file of files) {
    const stream = context.register(
      context.stream(await deflated(file.bytes, { level: 6 }), {
        Type: 'EmbeddedFile',
        Subtype: PDFName.of(file.mediaType),
        Filter: 'FlateDecode',
        Params: { Size: file.bytes.length, ModDate: PDFString.fromDate(date), CreationDate: PDFString.fromDate(date) },
      }),
    )
    specifications.push(
      context.register(
        context.obj({
          Type: 'Filespec',
          F: PDFString.of(file.name),
          UF: PDFHexString.fromText(file.name),
          Desc: PDFString.of(file.about),
          AFRelationship: file.name === 'manifest.json' ? 'Data' : 'Source',
          EF: { F: stream, UF: stream },
        }),
      ),
    )
  }
  const names = files.flatMap((file, index) => [PDFString.of(file.name), specifications[index] ?? PDFString.of('')])
  return { Names: { EmbeddedFiles: context.register(context.obj({ Names: names })) }, AF: specifications }
}
