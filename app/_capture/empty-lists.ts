import type { FieldValues } from 'react-hook-form'
import { FORMS } from '@/lib/capture/forms/form-table'
import type { RecordType } from '@/lib/domain/records/record'
import type { CaptureContext } from './capture-context'

/** Lists that a record must have, empty; and the chalk grid of point 01, which is a layout and no reading. */
export function emptyLists(type: RecordType, context: Pick<CaptureContext, 'grid'>): FieldValues {
  const values: FieldValues = {}
  for (const field of FORMS[type].fields) {
    if (
      field.kind === 'marks' ||
      field.kind === 'text-list' ||
      (field.kind === 'list' && field.atLeast === 0 && !field.optional)
    )
      values[field.name] = []
    if (field.kind === 'chalk-grid' && context.grid) values[field.name] = context.grid
  }
  return values
}
