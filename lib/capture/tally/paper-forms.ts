import { toNumber } from '@/lib/domain/decimal'
import type { PlanPoint } from '@/lib/domain/plan'
import type { RecordOf, RecordType } from '@/lib/domain/records/record'
import type { FieldSpec, FormSpec } from '../forms/field-spec'
import { FORMS } from '../forms/form-table'

/** One record form on paper: filled `copies` times, side by side as a log where each copy is a column of single values. */
export type PaperForm = {
  type: RecordType
  title: string
  layout: 'form' | 'log'
  copies: number
  isIfDone: boolean
  fields: readonly FieldSpec[]
}

const COPIES_AT_MOST = 12
/** Columns of a log without a number in the plan: a crew rarely stops at one. */
const LOG_COLUMNS = 4
/** Written into the lines for remarks, weeps and stops at the end of every sheet. */
const IN_LINES: ReadonlySet<RecordType> = new Set(['remark', 'weep', 'stop'])
const REPEATED: ReadonlySet<RecordType> = new Set(['ply', 'tape-roll', 'ply-count'])
const SINGLE: ReadonlySet<FieldSpec['kind']> = new Set([
  'measured',
  'reading',
  'text',
  'remark',
  'whole',
  'day',
  'moment',
  'yes-no',
  'clock',
  'person',
  'choice',
  'batch',
  'instrument',
])

/** The record forms of a point as a crew fills them on paper, in the plan's order; as many plies as the design has. */
export function paperForms(
  point: Pick<PlanPoint, 'records'>,
  design: Pick<RecordOf<'design'>, 'plies'> | null,
): PaperForm[] {
  return point.records
    .filter(({ type }) => !IN_LINES.has(type))
    .map(({ type, atLeast }) => {
      const form = FORMS[type]
      const isLog = REPEATED.has(type) && form.fields.every((one) => SINGLE.has(one.kind))
      const planned = type === 'ply' && design ? Math.round(toNumber(design.plies)) : atLeast
      const fewest = isLog && type !== 'ply-count' ? LOG_COLUMNS : 1
      return {
        type,
        title: form.title,
        layout: isLog ? 'log' : 'form',
        copies: Math.min(COPIES_AT_MOST, Math.max(fewest, planned)),
        isIfDone: atLeast === 0,
        fields: logFields(form, isLog),
      }
    })
}

/** A log's remarks stand in the lines at the end of the sheet: a column has no room for words. */
function logFields(form: FormSpec, isLog: boolean): readonly FieldSpec[] {
  return isLog ? form.fields.filter((one) => one.kind !== 'remark') : form.fields
}

/** Copies of a log in parts of at most as many columns as stand side by side on the sheet. */
export function logParts(copies: number, across = 4): number[][] {
  const all = Array.from({ length: copies }, (_, at) => at + 1)
  return Array.from({ length: Math.ceil(copies / across) }, (_, at) => all.slice(at * across, at * across + across))
}
