import type { BodyOf } from '@/lib/domain/facts/fact-kinds'
import type { Unit } from '@/lib/domain/reading'
import type { RecordType } from '@/lib/domain/records/record'

type Named = { name: string; label: string; hint?: string; optional?: true }

/** One control of a point form. The value it makes has exactly the shape of the record's zod schema. */
export type FieldSpec =
  | (Named & { kind: 'measured'; units: readonly [Unit, ...Unit[]] })
  | (Named & { kind: 'reading'; units: readonly [Unit, ...Unit[]] })
  | (Named & { kind: 'measured-list'; units: readonly [Unit, ...Unit[]]; addLabel: string })
  | (Named & { kind: 'text' | 'remark' | 'whole' | 'day' | 'moment' | 'yes-no' | 'clock' | 'person' })
  | (Named & { kind: 'choice'; options: readonly string[] })
  | (Named & { kind: 'batch'; roles: readonly BodyOf<'batch-received'>['role'][] })
  | (Named & { kind: 'instrument'; measures: readonly Unit[] })
  | (Named & {
      kind: 'marks'
      shape: 'stations' | 'filler' | 'numbered'
      prefix?: string
      quantity: string
      unit: Unit
      special: boolean
    })
  | (Named & { kind: 'chalk-grid' })
  | (Named & { kind: 'text-list'; addLabel: string })
  | (Named & {
      kind: 'list'
      each: string
      addLabel: string
      atLeast: number
      of: readonly FieldSpec[]
      /** A file of a logger may fill the list. */
      importer?: 'logger'
    })
  | (Named & { kind: 'group'; of: readonly FieldSpec[] })
  | (Named & { kind: 'variant'; by: string; variants: readonly { value: string; of: readonly FieldSpec[] }[] })

/** A point form: title, what it asks for, and the record field that says when it was observed (none: stamped apart). */
export type FormSpec = {
  type: RecordType
  title: string
  observed: string | null
  timer?: 'watch' | 'working-time'
  fields: readonly FieldSpec[]
}
