import { isRefused } from '@/lib/calc/refusal'
import { workingTime } from '@/lib/calc/working-time'
import { toNumber } from '@/lib/domain/decimal'
import type { JudgeContext } from '@/lib/domain/judge/judge-context'
import { Measured } from '@/lib/domain/reading'
import type { FormSpec } from './forms/field-spec'

/**
 * Minutes that a form's clock runs: the watch of the specification, or the working time of its table at the temperature as keyed, °C.
 * @returns null when the specification says nothing, the temperature is missing or not in °C, or it lies outside the table: nothing is assumed
 */
export function limitMinutesOf(spec: FormSpec, values: Record<string, unknown>, judge: JudgeContext): number | null {
  const rules = judge.specification.body.criteria.filter((one) => one.point === judge.point.no).map((one) => one.rule)
  if (spec.timer === 'watch') {
    const watch = rules.find(
      (rule) => rule.kind === 'window' && rule.start === 'watch-start' && rule.end === 'watch-end',
    )
    return watch?.kind === 'window' && watch.minMinutes ? toNumber(watch.minMinutes) : null
  }
  const rule = rules.find((one) => one.kind === 'working-time' && one.of === spec.type)
  const temp = Measured.safeParse(values[spec.type === 'tape-roll' ? 'surface' : 'resinTemp'])
  if (rule?.kind !== 'working-time' || !temp.success || temp.data.unit !== 'degC') return null
  const table = rule.table.rows.map((row): [number, number] => [toNumber(row.temp), toNumber(row.minutes)])
  const life = workingTime({ table, kind: rule.table.kind, tempC: toNumber(temp.data) })
  return isRefused(life) ? null : life.lifeMin
}
