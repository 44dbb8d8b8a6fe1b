'use client'
import { createContext, useContext, useMemo } from 'react'
import { type Control, type FieldValues, useWatch } from 'react-hook-form'
import type { FieldSpec } from '@/lib/capture/forms/field-spec'
import { fillerShape, numberedShape, stationShape } from '@/lib/capture/mark-shape'
import type { Unit } from '@/lib/domain/reading'
import { Grid } from '@/lib/domain/records/common'
import { useCapture } from './capture-context'
import { MarksField } from './marks-field'

/** Marks that an each-reading criterion finds outside its limit, by quantity, from the live verdicts of this form. */
export const FailingMarks = createContext<ReadonlyMap<string, ReadonlySet<string>>>(new Map())
/** Units that a gauge may show beside the metric one. Hardness scales have none. */
const ALSO: Partial<Record<Unit, readonly [Unit, ...Unit[]]>> = { mm: ['mm', 'in', 'mil'], um: ['um', 'mil'] }
const NONE: ReadonlySet<string> = new Set()

/** The marks of a field: laid out from the chalk grid, from the leak's clock position, or numbered to the count that the specification asks. */
export function MarksSlot({
  spec,
  control,
  path,
}: {
  spec: Extract<FieldSpec, { kind: 'marks' }>
  control: Control<FieldValues>
  path: string
}) {
  const { judge, grid, leakClock } = useCapture()
  const own: unknown = useWatch({ control, name: 'grid' })
  const scale: unknown = useWatch({ control, name: 'scale' })
  const failing = useContext(FailingMarks)
  const shape = useMemo(() => {
    if (spec.shape === 'filler') return leakClock ? fillerShape(leakClock) : null
    if (spec.shape === 'numbered')
      return numberedShape(spec.prefix ?? 'M', countOf(judge.specification.body.criteria, spec.quantity))
    const parsed = Grid.safeParse(own)
    const chalk = parsed.success ? parsed.data : grid
    return chalk ? stationShape(chalk) : null
  }, [spec, leakClock, judge, own, grid])
  if (!shape)
    return <p className="note warn">The marks of “{spec.label}” come from point 01: lay out the chalk grid first.</p>
  const units: readonly [Unit, ...Unit[]] =
    spec.quantity === 'hardness' && (scale === 'ShoreA' || scale === 'Barcol')
      ? [scale]
      : (ALSO[spec.unit] ?? [spec.unit])
  return (
    <MarksField
      control={control}
      path={path}
      label={spec.label}
      shape={shape}
      units={units}
      quantity={spec.quantity}
      failing={failingOf(failing, spec.quantity)}
    />
  )
}

function failingOf(failing: ReadonlyMap<string, ReadonlySet<string>>, quantity: string): ReadonlySet<string> {
  if (quantity !== 'filler-after') return failing.get(quantity) ?? NONE
  return new Set([...(failing.get('filler-on-ring') ?? NONE), ...(failing.get('filler-over-hole') ?? NONE)])
}

/** The count that the specification asks of a quantity; with no such criterion, one mark. */
function countOf(
  criteria: readonly { rule: { kind: string; quantity?: string; atLeast?: number } }[],
  quantity: string,
): number {
  const count = criteria.find((one) => one.rule.kind === 'count' && one.rule.quantity === quantity)
  return count?.rule.atLeast ?? 1
}
