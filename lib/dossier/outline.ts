import type { PointState } from '@/lib/domain/fold/repair-state'
import type { RecordType } from '@/lib/domain/records/record'
import { type Block, paragraph, type Section } from './blocks'
import type { DossierContext } from './dossier-context'
import { attemptBlocks } from './sections/attempt-blocks'
import { coverBlocks, type CoverRoom } from './sections/cover'
import { indexBlocks, revisionHistory } from './sections/front-matter'
import { legendBlocks } from './sections/legend'
import { locationBlocks } from './sections/location'
import { acceptanceBlocks, nonconformanceBlocks, noticeBlocks } from './sections/nonconformances'
import { photoCells } from './sections/photo-cells'
import { planExecutedBlocks } from './sections/plan-executed'
import { instrumentsBlocks, materialsBlocks, peopleBlocks } from './sections/registers'
import { summaryBlocks } from './sections/summary'
import { trailBlocks } from './sections/trail'

/** Titles of the dossier's sections, in its order. */
export const SECTION_TITLES = [
  'Cover', 'Revision history', 'Index, and what is missing', 'Summary', 'Location, cut and unrolled pipe, photos before and after', 'Defect assessment and design sheet', 'Plan as executed', 'Permit', 'Materials', 'Instruments', 'People and qualifications',
  'Surface and climate', 'Leak arrest and filler', 'Lay-up', 'Cure', 'Hardness, thickness, visual', 'Pressure or leak test', 'Nonconformances, concessions, queries', 'Notices and waivers', 'Photos', 'Acceptance and handover', 'Trail', 'In-service records', 'How to read this dossier',
] as const

const SECTION_OF_RECORD: Partial<Record<RecordType, number>> = {
  defect: 5, design: 5, permit: 7, materials: 8, instruments: 9, cleanliness: 11, profile: 11, climate: 11, 'pre-wrap': 11, arrest: 12, 'arrest-watch': 12, 'filler-mix': 12, 'filler-thickness': 12, 'filler-cure': 12, primer: 13, 'resin-mix': 13, ply: 13, 'ply-count': 13,
  'tape-roll': 13, 'tape-wrap': 13, cure: 14, hardness: 15, thickness: 15, visual: 15, 'pressure-test': 16, checklist: 20, handover: 20, 'in-service': 22, removal: 22,
}

/** Section in which a point is printed: by what the plan lets it record, otherwise by what was recorded; a point of neither is printed with the plan. */
export function sectionOfPoint(point: PointState): number {
  const types = [...point.plan.records.map((one) => one.type), ...point.attempts.flatMap((attempt) => attempt.records.map((one) => one.record.type))]
  return types.map((type) => SECTION_OF_RECORD[type]).find((one) => one !== undefined) ?? 6
}

/** Sheets of the sections as laid out; null while they are not known yet. */
export type SectionSheets = ReadonlyMap<string, number> | null

/** The dossier as data: every section in order with its blocks. Pure. @param sheets where each section starts, for the index @param room of the cover's tables */
export function outline(context: DossierContext, sheets: SectionSheets, room: CoverRoom): Section[] {
  const sections = SECTION_TITLES.map((title, at): Section => {
    const blocks = at === 0 ? coverBlocks(context, room, (section) => sheetText(section, sheets)) : at === 2 ? [] : [{ kind: 'section', no: String(at), text: title } as const, ...blocksOf(at, context)]
    return { no: String(at), title, blocks: STARTS_SHEET.has(at) ? [{ kind: 'break', unlessLeft: 1 }, ...blocks] : blocks }
  })
  const entries = sections.map((section) => ({ no: section.no, title: section.title, sheet: sheetText(section.no, sheets), remark: remarkOf(section) }))
  return sections.map((section) => (section.no === '2' ? { ...section, blocks: [{ kind: 'section', no: '2', text: section.title }, ...indexBlocks(context, entries)] } : section))
}

const STARTS_SHEET: ReadonlySet<number> = new Set([1, 3, 4, 6, 17, 19, 21])

function blocksOf(at: number, context: DossierContext): Block[] {
  const points = context.state.points.filter((point) => sectionOfPoint(point) === at).flatMap((point) => point.attempts.flatMap((attempt) => attemptBlocks(point, attempt, context)))
  const own = ownBlocks(at, context)
  return own.length + points.length > 0 ? [...own, ...points] : [paragraph(NOTHING[at] ?? 'The plan has no point for this section.', 'soft')]
}

const NOTHING: Partial<Record<number, string>> = { 22: 'No in-service inspection and no removal is recorded.' }

function ownBlocks(at: number, context: DossierContext): Block[] {
  switch (at) {
    case 1: return revisionHistory(context, context.personName)
    case 3: return summaryBlocks(context)
    case 4: return locationBlocks(context)
    case 6: return planExecutedBlocks(context)
    case 8: return materialsBlocks(context)
    case 9: return instrumentsBlocks(context)
    case 10: return peopleBlocks(context)
    case 17: return nonconformanceBlocks(context)
    case 18: return noticeBlocks(context)
    case 19: return context.photos.length > 0 ? [{ kind: 'photos', perRow: 2, pictureHeightPt: 216, photos: photoCells(context.photos, context, 'full') }] : [paragraph('No photos.', 'not-proven')]
    case 20: return acceptanceBlocks(context)
    case 21: return trailBlocks(context)
    case 23: return legendBlocks(context)
    default: return []
  }
}

function sheetText(no: string, sheets: SectionSheets): string {
  return sheets === null ? '000' : String(sheets.get(no) ?? '–')
}

function remarkOf(section: Section): string {
  const empty = section.blocks.filter((block) => block.kind === 'title' && block.sign?.glyph === 'open').length
  const titles = section.blocks.filter((block) => block.kind === 'title').length
  if (titles > 0) return `${titles} attempt${titles === 1 ? '' : 's'} at points${empty > 0 ? `, ${empty} with nothing recorded` : ''}`
  return section.no !== '2' && section.blocks.length <= 2 ? 'nothing to show, said so' : ''
}
