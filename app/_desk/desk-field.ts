import type { Unit } from '@/lib/domain/reading'

type Named = { name: string; label: string; hint?: string; optional?: true }
export type Choice = { id: string; label: string; note?: string }

/** One control of a desk form, as plain data: a server page hands it to the form. `name` is the path in the body, such as `range.min`. */
export type DeskField =
  | (Named & { kind: 'text' | 'remark' | 'day' | 'whole' | 'decimal' | 'flag' | 'lines' | 'limit' | 'float' })
  | (Named & { kind: 'label'; fills: 'batch' | 'instrument' })
  | (Named & { kind: 'measured' | 'reading'; units: readonly [Unit, ...Unit[]] })
  | (Named & { kind: 'choice'; options: readonly string[] })
  | (Named & { kind: 'select' | 'several'; options: readonly Choice[] })
  | (Named & { kind: 'list'; each: string; addLabel: string; of: readonly DeskField[] })
