import { type Block, paragraph, type Section } from './blocks'
import type { DossierContext } from './dossier-context'
import { sectionOfPoint } from './section-of-point'
import { attemptBlocks } from './sections/attempt-blocks'
import { type CoverParts, type CoverRoom, coverBlocks } from './sections/cover'
import { designSheetBlocks } from './sections/design-sheet'
import { indexBlocks, revisionHistory } from './sections/front-matter'
import { legendBlocks } from './sections/legend'
import { locationBlocks } from './sections/location'
import { acceptanceBlocks, nonconformanceBlocks, noticeBlocks } from './sections/nonconformances'
import { photoBlocks } from './sections/photo-blocks'
import { planExecutedBlocks } from './sections/plan-executed'
import { quantityBlocks } from './sections/quantity-sheet'
import { instrumentsBlocks, materialsBlocks, peopleBlocks } from './sections/registers'
import { summaryBlocks } from './sections/summary'
import { trailBlocks } from './sections/trail'
import { WORKING_SECTION, workingBlocks } from './sections/working'

/** Titles of the dossier's sections, in its order. */
export const SECTION_TITLES = [
  'Cover',
  'Revision history',
  'Index, and what is missing',
  'Summary',
  'Location, cut and unrolled pipe, photos before and after',
  'Defect assessment and design sheet',
  'Plan as executed',
  'Permit',
  'Materials',
  'Instruments',
  'People and qualifications',
  'Surface and climate',
  'Leak arrest and filler',
  'Lay-up',
  'Cure',
  'Hardness, thickness, visual',
  'Pressure or leak test',
  'Nonconformances, concessions, queries',
  'Notices and waivers',
  'Photos',
  'Acceptance and handover',
  'Trail',
  'In-service records',
  'How to read this dossier',
  'Annex: the working of each figure',
] as const

/** Sheets of the sections as laid out; null while they are not known yet. */
export type SectionSheets = ReadonlyMap<string, number> | null
const FRONT = 3

/** The dossier's body as data: sections 3 onwards in order with their blocks. Pure. */
export function outline(context: DossierContext): Section[] {
  return SECTION_TITLES.map((title, at): Section => {
    const blocks: Block[] =
      at < FRONT ? [] : [{ kind: 'section', no: String(at), text: title }, ...blocksOf(at, context)]
    return {
      no: String(at),
      title,
      blocks: STARTS_SHEET.has(at) ? [{ kind: 'break', unlessLeft: 1 }, ...blocks] : blocks,
    }
  }).slice(FRONT)
}

/** Cover, revision history and index, which names the sheet of every section. @param sheets where each section starts @param cover what stands on the cover, and how much of it */
export function frontMatter(
  context: DossierContext,
  body: readonly Section[],
  sheets: SectionSheets,
  cover: { parts: CoverParts; room: CoverRoom },
): Section[] {
  const titled = (at: number, blocks: Block[]): Section => ({
    no: String(at),
    title: SECTION_TITLES[at] ?? '',
    blocks: [
      ...(at === 1 ? [{ kind: 'break', unlessLeft: 1 } as const] : []),
      { kind: 'section', no: String(at), text: SECTION_TITLES[at] ?? '' },
      ...blocks,
    ],
  })
  const fronts = SECTION_TITLES.slice(0, FRONT).map((title, at) => ({
    no: String(at),
    title: String(title),
    remark: '',
  }))
  const entries = [
    ...fronts,
    ...body.map((section) => ({ no: section.no, title: section.title, remark: remarkOf(section) })),
  ].map((one) => ({ ...one, sheet: sheetText(one.no, sheets) }))
  return [
    {
      no: '0',
      title: SECTION_TITLES[0],
      blocks: coverBlocks(context, cover.parts, cover.room, (section) => sheetText(section, sheets)),
    },
    titled(1, revisionHistory(context, context.personName)),
    titled(2, indexBlocks(context, entries)),
  ]
}

const STARTS_SHEET: ReadonlySet<number> = new Set([3, 4, 6, 17, 19, 21, WORKING_SECTION])

function blocksOf(at: number, context: DossierContext): Block[] {
  const points = context.state.points
    .filter((point) => sectionOfPoint(point) === at)
    .flatMap((point) => point.attempts.flatMap((attempt) => attemptBlocks(point, attempt, context)))
  const own = ownBlocks(at, context)
  return own.length + points.length > 0
    ? [...own, ...points]
    : [paragraph(NOTHING[at] ?? 'The plan has no point for this section.', 'soft')]
}

const NOTHING: Partial<Record<number, string>> = { 22: 'No in-service inspection and no removal is recorded.' }

function ownBlocks(at: number, context: DossierContext): Block[] {
  switch (at) {
    case 3:
      return summaryBlocks(context)
    case 4:
      return locationBlocks(context)
    case 5:
      return designSheetBlocks(context)
    case 6:
      return planExecutedBlocks(context)
    case 8:
      return [...materialsBlocks(context), ...quantityBlocks(context)]
    case 9:
      return instrumentsBlocks(context)
    case 10:
      return peopleBlocks(context)
    case 17:
      return nonconformanceBlocks(context)
    case 18:
      return noticeBlocks(context)
    case 19:
      return photoBlocks(context)
    case 20:
      return acceptanceBlocks(context)
    case 21:
      return trailBlocks(context)
    case 23:
      return legendBlocks(context)
    case WORKING_SECTION:
      return workingBlocks(context)
    default:
      return []
  }
}

function sheetText(no: string, sheets: SectionSheets): string {
  return sheets === null ? '000' : String(sheets.get(no) ?? '–')
}

function remarkOf(section: Section): string {
  const empty = section.blocks.filter((block) => block.kind === 'title' && block.sign?.glyph === 'open').length
  const titles = section.blocks.filter((block) => block.kind === 'title').length
  if (titles > 0)
    return `${titles} attempt${titles === 1 ? '' : 's'} at points${empty > 0 ? `, ${empty} with nothing recorded` : ''}`
  return section.blocks.length <= 2 ? 'nothing to show, said so' : ''
}
