import { createHash } from 'node:crypto'
import { promisify } from 'node:util'
import { deflate } from 'node:zlib'
import { PDFContext, type PDFDict, type PDFRef } from 'pdf-lib'
import { drawSheet, FONT_NAMES } from '../draw/draw-sheet'
import type { Face } from '../layout/font-metrics'
import type { LaidOut, Placed } from '../layout/placed'
import { SHEET } from '../layout/sheet'
import type { AttachedFile } from '../manifest'
import type { DossierSigner } from '../sign/dossier-signer'
import { attachFiles } from './attach-files'
import { bookmarks } from './bookmarks'
import { FaceEmbedding } from './face-embedding'
import type { Faces } from './faces'
import { type Conformance, type DocumentFacts, writeMetadata } from './metadata'
import { signatureField } from './signature-object'
import { StructureTree } from './structure-tree'
import type { ComposedDocument, StreamedPhoto } from './write-streaming'

const deflated: (text: string, options: { level: number }) => Promise<Buffer> = promisify(deflate)

/** Pages packed beside each other: each takes a quarter of a megabyte meanwhile. */
const AT_ONCE = 4

/** What goes into a document beside its sheets. */
export type DocumentParts = {
  facts: DocumentFacts
  conformance: Conformance
  /** Attachments in the order of their names, made once the number of every photo's object is known. */
  attachments: ((objectOf: (sha256: string) => number | null) => AttachedFile[]) | null
  signer: DossierSigner | null
}

/**
 * The dossier as a graph of PDF objects without its photos: pages, typefaces, structure, bookmarks, metadata, attachments, the field of the signature. Every name, date and
 * id comes from the arguments, so the same sheets give the same objects. The file's id is a digest of `identity` and of all that is drawn.
 */
export async function composeDocument(
  laidOut: LaidOut,
  titleBlocks: readonly (readonly Placed[])[],
  faces: Faces,
  { facts, conformance, attachments, signer }: DocumentParts,
): Promise<ComposedDocument> {
  const context = PDFContext.create()
  const structure = new StructureTree(context, laidOut.structure, SHEET.heightPt)
  const fonts = new Fonts(context, faces)
  const photos = new Map<string, StreamedPhoto & { name: string }>()
  const tree = context.nextRef()
  const field = signer ? { signature: context.nextRef(), widget: context.nextRef() } : null
  const identity = createHash('sha256').update(facts.identity)
  const pages: PDFRef[] = laidOut.sheets.map(() => context.nextRef())
  const packed: Promise<void>[] = []
  for (const [index, sheet] of laidOut.sheets.entries()) {
    const used = new Map<string, PDFRef>()
    const content = drawSheet([...sheet.items, ...(titleBlocks[index] ?? [])], SHEET.heightPt, {
      encode: (text, face) => fonts.encode(text, face),
      photoName(sha256) {
        const known = photos.get(sha256) ?? { ref: context.nextRef(), sha256, name: `P${photos.size + 1}` }
        photos.set(sha256, known)
        used.set(known.name, known.ref)
        return known.name
      },
      markOf: (element) => structure.markOn(index, element),
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
    const page = context.obj({
      Type: 'Page',
      Parent: tree,
      MediaBox: [0, 0, SHEET.widthPt, SHEET.heightPt],
      Contents: contents,
      Resources: { Font: fonts.resources, XObject: Object.fromEntries(used) },
      StructParents: index,
      Tabs: 'S',
      ...(index === 0 && field ? { Annots: [field.widget] } : {}),
    })
    context.assign(pages[index] ?? context.nextRef(), page)
  }
  await Promise.all(packed)
  context.assign(tree, context.obj({ Type: 'Pages', Kids: pages, Count: pages.length }))
  await fonts.embed(conformance === 'PDF/A-1b')
  const objectOf = (sha256: string): number | null => photos.get(sha256)?.ref.objectNumber ?? null
  const attached = attachments ? await attachFiles(context, attachments(objectOf), facts.asOf) : {}
  const [first] = pages
  if (field && first) context.assign(field.widget, signatureField(context, first, field.signature, pages.length))
  const { root, objects } = structure.write(pages, field?.widget ?? null)
  writeMetadata(
    context,
    {
      Pages: tree,
      Outlines: bookmarks(context, laidOut, pages),
      StructTreeRoot: root,
      ...(field ? { AcroForm: { Fields: [field.widget], SigFlags: 3 } } : {}),
      ...attached,
    },
    facts,
    identity.digest('hex').slice(0, 32),
    conformance,
  )
  return {
    context,
    ready: objects,
    photos: [...photos.values()].map(({ ref, sha256 }) => ({ ref, sha256 })),
    signature: signer && field ? { ref: field.signature, signer } : null,
    version: conformance === 'PDF/A-3u' ? '1.7' : '1.4',
  }
}

/** The three typefaces of a document under the names that pages call them by. */
class Fonts {
  private readonly embeddings: Record<Face, FaceEmbedding>
  private readonly refs: Record<Face, PDFRef>
  readonly resources: PDFDict

  constructor(
    private readonly context: PDFContext,
    { files }: Faces,
  ) {
    this.embeddings = {
      regular: new FaceEmbedding(files.regular, 'UWRPRG'),
      bold: new FaceEmbedding(files.bold, 'UWRPBD'),
      mono: new FaceEmbedding(files.mono, 'UWRPMN'),
    }
    this.refs = { regular: context.nextRef(), bold: context.nextRef(), mono: context.nextRef() }
    this.resources = context.obj({
      [FONT_NAMES.regular]: this.refs.regular,
      [FONT_NAMES.bold]: this.refs.bold,
      [FONT_NAMES.mono]: this.refs.mono,
    })
  }

  encode(text: string, face: Face): string {
    return this.embeddings[face].encode(text)
  }

  async embed(listsGlyphs: boolean): Promise<void> {
    for (const face of ['regular', 'bold', 'mono'] as const)
      await this.embeddings[face].embed(this.context, this.refs[face], listsGlyphs)
  }
}
