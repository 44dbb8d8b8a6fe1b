import { instantOf } from '@/lib/domain/time'
import { attachedFiles } from './attached-files'
import { dossierContext, photosOf } from './dossier-context'
import { type DossierInput, TEMPLATE } from './dossier-input'
import { type CodeRows, drawCode } from './draw-code'
import { loadFormatText } from './format-text'
import type { FontMetrics } from './layout/font-metrics'
import { layOut } from './layout/lay-out'
import type { LaidOut } from './layout/placed'
import { titleBlock } from './layout/title-block'
import { frontMatter, outline, type SectionSheets } from './outline'
import { composeDocument } from './pdf/document'
import { loadFaces } from './pdf/faces'
import type { Conformance } from './pdf/metadata'
import type { PhotoBytes } from './pdf/photo-reader'
import { PhotoUnusable, writeStreaming } from './pdf/write-streaming'
import { COVER_ROOMS, type CoverRoom, coverBlocks, coverParts, issueLine } from './sections/cover'

const SMALLEST_COVER: CoverRoom = { builtRows: 0, missingRows: 0, pictureHeightPt: 130 }

/** How far a build is. Photos are counted in the order written. */
export type DossierProgress =
  | { step: 'gathering' }
  | { step: 'laying out' }
  | { step: 'writing'; photosWritten: number; photosInAll: number }

export type BuiltDossier = {
  sha256: string
  sizeBytes: number
  pageCount: number
  missing: string[]
  unreadablePhotos: string[]
}

/**
 * Build a dossier and write it to `outPath`, synced. The same input gives the same bytes, a signature's own value aside. Photos are read one at a time; one that is missing
 * or does not match its digest is replaced by a statement of that, never left out.
 * @throws Error when the disk refuses, the typefaces are not installed, or the time-stamp service that the signer asks gives no usable answer
 */
export async function buildDossier(
  input: DossierInput,
  photos: PhotoBytes,
  outPath: string,
  onProgress: (progress: DossierProgress) => void = () => undefined,
  options: { conformance?: Conformance } = {},
): Promise<BuiltDossier> {
  onProgress({ step: 'gathering' })
  const faces = await loadFaces()
  const { seal } = input
  const formatText = seal && (await loadFormatText())
  const checkCode = seal ? await drawCode(seal.checkAddress) : null
  const unreadable = await absentRenditions(input, photos)
  for (;;) {
    onProgress({ step: 'laying out' })
    const laidOut = layOutDossier(input, unreadable, faces.metrics, checkCode)
    const document = await composeDocument(laidOut, titleBlocks(input, unreadable, laidOut, faces.metrics), faces, {
      conformance: options.conformance ?? 'PDF/A-3u',
      signer: seal?.signer ?? null,
      attachments: seal && formatText ? (objectOf) => attachedFiles(input, seal, formatText, objectOf) : null,
      facts: {
        title: `Dossier of repair ${input.state.number}`,
        subject: `${input.state.opened.body.line}, ${input.head.kind === 'issue' ? `revision ${input.head.revision}, ${input.head.purpose}` : 'for review, not issued'}`,
        author: input.organisation,
        asOf: new Date(instantOf(input.state.asOf)),
        identity: JSON.stringify([
          TEMPLATE,
          input.state.rules,
          input.state.stream,
          input.state.asOf,
          input.head,
          input.organisation,
          input.isDemo,
          seal?.checkpoint,
          seal?.signer.certificate.sha256,
        ]),
      },
    })
    try {
      const written = await writeStreaming(document, photos, outPath, (photosWritten) =>
        onProgress({ step: 'writing', photosWritten, photosInAll: document.photos.length }),
      )
      return {
        ...written,
        pageCount: laidOut.sheets.length,
        missing: input.state.missing.map((one) => (one.point ? `${one.point}: ${one.text}` : one.text)),
        unreadablePhotos: [...unreadable].sort(),
      }
    } catch (error) {
      if (!(error instanceof PhotoUnusable) || unreadable.has(error.sha256)) throw error
      unreadable.add(error.sha256)
    }
  }
}

/**
 * Lay the dossier out: the cover with as much as fits one sheet; the body once; then the front matter, whose index names the sheets of the body. Pure. The summary
 * always starts a sheet, so that the front matter's sheets are its own.
 */
export function layOutDossier(
  input: DossierInput,
  unreadable: ReadonlySet<string>,
  metrics: FontMetrics,
  checkCode: CodeRows | null = null,
): LaidOut {
  const context = dossierContext(input, unreadable, checkCode)
  const parts = coverParts(context)
  const room =
    COVER_ROOMS.find(
      (one) =>
        layOut([{ no: '0', title: '', blocks: coverBlocks(context, parts, one, () => '000') }], metrics).sheets
          .length === 1,
    ) ?? SMALLEST_COVER
  const sections = outline(context)
  const front = (sheets: SectionSheets): LaidOut =>
    layOut(frontMatter(context, sections, sheets, { parts, room }), metrics)
  const frontCount = front(null).sheets.length
  const body = layOut(sections, metrics)
  const sheetOf = new Map(body.sectionSheets.map((one) => [one.no, one.sheetNo + frontCount]))
  const first = front(sheetOf)
  const opening = front(new Map([...first.sectionSheets.map((one) => [one.no, one.sheetNo] as const), ...sheetOf]))
  return {
    structure: [...opening.structure, ...body.structure],
    sheets: [...opening.sheets, ...body.sheets],
    sectionSheets: [
      ...opening.sectionSheets,
      ...body.sectionSheets.map((one) => ({ ...one, sheetNo: one.sheetNo + frontCount })),
    ],
  }
}

function titleBlocks(
  input: DossierInput,
  unreadable: ReadonlySet<string>,
  laidOut: LaidOut,
  metrics: FontMetrics,
): ReturnType<typeof titleBlock>[] {
  const context = dossierContext(input, unreadable, null)
  const block = {
    repair: input.state.number,
    line: input.state.opened.body.line,
    issue: issueLine(context),
    note: input.isDemo ? 'Demonstration record: everything in it is invented.' : '',
  }
  return laidOut.sheets.map((_, index) => titleBlock(block, index + 1, laidOut.sheets.length, metrics))
}

async function absentRenditions(input: DossierInput, photos: PhotoBytes): Promise<Set<string>> {
  const renditions = new Set(photosOf(input).map(({ photo }) => photo.fact.body.photo.rendition.sha256))
  const absent = new Set<string>()
  for (const sha256 of renditions) if (!(await photos.has(sha256))) absent.add(sha256)
  return absent
}
