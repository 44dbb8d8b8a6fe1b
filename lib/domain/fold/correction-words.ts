import type { BodyOf } from '../facts/fact-kinds'
import { showReading } from '../reading'
import { fieldLabel } from '../records/field-labels'
import type { PointRecord } from '../records/record'
import { RECORD_TITLES } from '../records/record-titles'
import { isMarkedReadings, type Names, readingOf, showValue } from '../records/show-value'

type Change = BodyOf<'corrected'>['changes'][number]

/** One change of a correction: where it is, what was keyed, what it should have been, and all of it as one phrase without a full stop. */
export type CorrectionWords = { where: string; from: string; to: string; phrase: string }

const BARE: Names = { personName: (person) => person, streamTitle: (stream) => stream.slice(stream.indexOf(':') + 1) }

/**
 * One change of a correction in words: `Hardness, C-12: 47 corrected to 74 Shore D`. The same on screens, in the remarkable list and in the dossier.
 * @param record the record that it corrects, as it stands; the fields of a path are named by themselves where it is not known
 */
export function correctionWords(record: PointRecord | null, change: Change, names: Names = BARE): CorrectionWords {
  const where = whereOf(record, change.path)
  const field = String(change.path.findLast((part) => typeof part === 'string') ?? '')
  const from = shownOf(field, change.from, names)
  const to = shownOf(field, change.to, names)
  return { where, from, to, phrase: `${where}: ${withoutUnit(change) ?? from} corrected to ${to}` }
}

/** Old value without its unit where both are numbers of one unit: it is said once, after the new one. */
function withoutUnit({ from, to }: Change): string | null {
  const [old, now] = [readingOf(from), readingOf(to)]
  return old && now && 'unit' in old && 'unit' in now && old.unit === now.unit ? showReading(old) : null
}

function whereOf(record: PointRecord | null, path: Change['path']): string {
  const [name, index, ...rest] = path
  const list: unknown = record && Object.entries(record).find(([key]) => key === name)?.[1]
  const mark = typeof index === 'number' && isMarkedReadings(list) ? list[index]?.mark : undefined
  return [
    name === 'readings' && record ? (RECORD_TITLES[record.type] ?? fieldLabel(name)) : fieldLabel(String(name)),
    mark ?? (index === undefined ? undefined : typeof index === 'number' ? `line ${index + 1}` : fieldLabel(index)),
    ...rest
      .filter((part) => part !== 'reading')
      .map((part) => (typeof part === 'number' ? `line ${part + 1}` : fieldLabel(part))),
  ]
    .filter(Boolean)
    .join(', ')
}

function shownOf(field: string, value: unknown, names: Names): string {
  return value === null ? 'nothing' : showValue(field, value, names)
}
