import { createHash } from 'node:crypto'
import { promisify } from 'node:util'
import { deflate } from 'node:zlib'
import { PDFContext, PDFHexString, type PDFRef, PDFString } from 'pdf-lib'
import { drawSheet, FONT_NAMES } from '../draw/draw-sheet'
import type { Face } from '../layout/font-metrics'
import type { LaidOut, Placed } from '../layout/placed'
import { SHEET } from '../layout/sheet'
import { FaceEmbedding } from './face-embedding'
import type { Faces } from './faces'
import type { StreamedPhoto } from './write-streaming'

const deflated: (text: string, options: { level: number }) => Promise<Buffer> = promisify(deflate)

/** Pages packed beside each other: each takes a quarter of a megabyte meanwhile. */
const AT_ONCE = 4

export type DocumentFacts = { title: string; subject: string; author: string; asOf: Date; identity: string }

/**
 * The dossier as a graph of PDF objects without its photos: pages, typefaces, bookmarks, metadata. Every name, date and id comes from the arguments,
 * so the same sheets give the same objects. The file's id is a digest of `identity` and of all that is drawn.
 */
export async function composeDocument(
  laidOut: LaidOut,
  titleBlocks: readonly (readonly Placed[])[],
  faces: Faces,
  facts: DocumentFacts,
): Promise<{ context: PDFContext; photos: StreamedPhoto[] }> {
  const context = PDFContext.create()
  const embeddings: Record<Face, FaceEmbedding> = {
    regular: new FaceEmbedding(faces.files.regular, 'UWRPRG'),
    bold: new FaceEmbedding(faces.files.bold, 'UWRPBD'),
    mono: new FaceEmbedding(faces.files.mono, 'UWRPMN'),
  }
  const fontRefs: Record<Face, PDFRef> = {
    regular: context.nextRef(),
    bold: context.nextRef(),
    mono: context.nextRef(),
  }
  const fonts = context.obj({
    [FONT_NAMES.regular]: fontRefs.regular,
    [FONT_NAMES.bold]: fontRefs.bold,
    [FONT_NAMES.mono]: fontRefs.mono,
  })
  const photos = new Map<string, StreamedPhoto & { name: string }>()
  const tree = context.nextRef()
  const identity = createHash('sha256').update(facts.identity)
  const pages: PDFRef[] = []
  const packed: Promise<void>[] = []
  for (const [index, sheet] of laidOut.sheets.entries()) {
    const used = new Map<string, PDFRef>()
    const photoName = (sha256: string): string => {
      const known = photos.get(sha256) ?? { ref: context.nextRef(), sha256, name: `P${photos.size + 1}` }
      photos.set(sha256, known)
      used.set(known.name, known.ref)
      return known.name
    }
    const content = drawSheet([...sheet.items, ...(titleBlocks[index] ?? [])], SHEET.heightPt, {
      encode: (text, face) => embeddings[face].encode(text),
      photoName,
      metrics: faces.metrics,
    })
    identity.update(content)
    const contents = context.nextRef()
    await packed[index - AT_ONCE]
    packed.push(
      deflated(content, { level: 4 }).then((bytes) =>
        context.assign(contents, context.stream(bytes, { Filter: 'FlateDecode' })),
      ),
    )
    pages.push(
      context.register(
        context.obj({
          Type: 'Page',
          Parent: tree,
          MediaBox: [0, 0, SHEET.widthPt, SHEET.heightPt],
          Contents: contents,
          Resources: { Font: fonts, XObject: Object.fromEntries(used) },
        }),
      ),
    )
  }
  await Promise.all(packed)
  context.assign(tree, context.obj({ Type: 'Pages', Kids: pages, Count: pages.length }))
  for (const face of ['regular', 'bold', 'mono'] as const) await embeddings[face].embed(context, fontRefs[face])
  writeMetadata(context, tree, bookmarks(context, laidOut, pages), {
    ...facts,
    idHex: identity.digest('hex').slice(0, 32),
  })
  return { context, photos: [...photos.values()].map(({ ref, sha256 }) => ({ ref, sha256 })) }
}

function bookmarks(context: PDFContext, laidOut: LaidOut, pages: readonly PDFRef[]): PDFRef {
  const root = context.nextRef()
  const entries = laidOut.sectionSheets.map((section) => ({ section, ref: context.nextRef() }))
  for (const [index, { section, ref }] of entries.entries()) {
    const page = pages[section.sheetNo - 1]
    const [previous, next] = [entries[index - 1]?.ref, entries[index + 1]?.ref]
    context.assign(
      ref,
      context.obj({
        Title: PDFHexString.fromText(`${section.no} ${section.title}`.trim()),
        Parent: root,
        ...(page ? { Dest: [page, 'Fit'] } : {}),
        ...(previous ? { Prev: previous } : {}),
        ...(next ? { Next: next } : {}),
      }),
    )
  }
  const [first, last] = [entries[0]?.ref, entries.at(-1)?.ref]
  context.assign(
    root,
    context.obj({ Type: 'Outlines', Count: entries.length, ...(first && last ? { First: first, Last: last } : {}) }),
  )
  return root
}

function writeMetadata(
  context: PDFContext,
  tree: PDFRef,
  outlines: PDFRef,
  facts: DocumentFacts & { idHex: string },
): void {
  const date = PDFString.fromDate(facts.asOf)
  const text = (value: string): PDFHexString => PDFHexString.fromText(value)
  const metadata = context.register(
    context.stream(Buffer.from(xmpOf(facts), 'utf8'), { Type: 'Metadata', Subtype: 'XML' }),
  )
  context.trailerInfo.Root = context.register(
    context.obj({
      Type: 'Catalog',
      Pages: tree,
      Outlines: outlines,
      Metadata: metadata,
      Lang: PDFString.of('en'),
      ViewerPreferences: { DisplayDocTitle: true },
    }),
  )
  context.trailerInfo.Info = context.register(
    context.obj({
      Title: text(facts.title),
      Subject: text(facts.subject),
      Author: text(facts.author),
      Creator: text('Underwrap'),
      Producer: text('Underwrap'),
      CreationDate: date,
      ModDate: date,
    }),
  )
  context.trailerInfo.ID = context.obj([PDFHexString.of(facts.idHex), PDFHexString.of(facts.idHex)])
}

function xmpOf({ title, subject, author, asOf }: DocumentFacts): string {
  const escaped = (value: string): string => value.replace(/[<&>]/g, (mark) => `&#${mark.charCodeAt(0)};`)
  const iso = `${asOf.toISOString().slice(0, 19)}+00:00`
  return `<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?><x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/"><dc:format>application/pdf</dc:format><dc:language><rdf:Bag><rdf:li>en</rdf:li></rdf:Bag></dc:language><dc:title><rdf:Alt><rdf:li xml:lang="x-default">${escaped(title)}</rdf:li></rdf:Alt></dc:title><dc:description><rdf:Alt><rdf:li xml:lang="x-default">${escaped(subject)}</rdf:li></rdf:Alt></dc:description><dc:creator><rdf:Seq><rdf:li>${escaped(author)}</rdf:li></rdf:Seq></dc:creator><xmp:CreateDate>${iso}</xmp:CreateDate><xmp:ModifyDate>${iso}</xmp:ModifyDate><xmp:CreatorTool>Underwrap</xmp:CreatorTool><pdf:Producer>Underwrap</pdf:Producer></rdf:Description></rdf:RDF></x:xmpmeta><?xpacket end="w"?>`
}
