import { showDecimal } from '../decimal'
import { computedPlaces } from '../judge/quantity-names'
import type { CriterionResult } from '../judge/verdict'
import { showKept } from '../records/show-value'
import { showMoment } from '../time'
import { designThen } from './design-then'
import { saltInputs } from './surface-lines'
import { type OwnRecord, ofType, ownRecords, type WorkingGround, type WorkingInput } from './working'
import {
  correctionInputs,
  cureInputs,
  input,
  mixInputs,
  mixTimes,
  plugValues,
  pressureInputs,
  rollTimes,
} from './working-inputs-of-work'

/** What a criterion was judged from, each value as recorded and with its fact. */
export function workingInputs(result: CriterionResult, ground: WorkingGround): WorkingInput[] {
  if (result.inputs) return result.inputs
  const { rule } = result.criterion
  const own = ownRecords(ground.attempt)
  const design = designThen(ground.state, ground.attempt)
  switch (rule.kind) {
    case 'each':
    case 'mean':
    case 'count':
      return [
        ...(rule.quantity === 'salts' ? saltInputs(own) : []),
        ...readingInputs(own, rule.quantity),
        ...limitInputs(result, ground),
      ]
    case 'yes':
    case 'no':
      return own.flatMap((one) =>
        one.yields.flags
          .filter((flag) => flag.name === rule.flag)
          .map((flag) => ({ label: recordWord(one), value: flag.value, fact: one.fact })),
      )
    case 'grade':
      return ofType(own, 'cleanliness').flatMap(({ record, fact }) =>
        record.grade ? [{ label: 'grade found', value: record.grade, fact }] : [],
      )
    case 'ratio':
      return mixInputs(own)
    case 'working-time':
      return [...mixTimes(own), ...rollTimes(own), ...tableInput(rule.table.kind, rule.table.rows)]
    case 'hardening-time':
      return [
        ...plugValues(own, ['pressedAt', 'judgedHardAt', 'ambient']),
        ...tableInput(rule.table.kind, rule.table.rows),
      ]
    case 'plug-amount':
      return [
        ...plugValues(own, ['puttyUsed']),
        ...defectValues(ground, ['holeAxial', 'holeHoop', 'nominalWall']),
        { label: 'factor', value: showDecimal(rule.timesHoleVolume), fact: null },
      ]
    case 'band-length':
      return plugValues(own, ['girths', 'bandCut', 'bandBuild', 'bandThickness', 'bandTail'])
    case 'tape-start':
      return [
        ...ofType(own, 'tape-wrap').flatMap(({ record, fact }) =>
          record.startBeforeLeak ? [input('start before the leak', record.startBeforeLeak, fact)] : [],
        ),
        ...(design ? [input('total length as designed', design.record.totalLength, design.fact.id)] : []),
      ]
    case 'cure-hold':
    case 'cure-equivalent':
      return cureInputs(own)
    case 'pressure-drop':
      return [
        ...pressureInputs(own),
        ...(design
          ? [
              input('D as designed', design.record.designDiameter, design.fact.id),
              input('t as designed', design.record.designWall, design.fact.id),
            ]
          : []),
        ...correctionInputs(rule.correction),
      ]
    case 'plies':
      return [
        ...readingInputs(own, 'plies-counted').map((one) => ({
          ...one,
          label: `counted by ${one.label.replaceAll('-', ' ')}`,
        })),
        ...(design
          ? [{ label: 'plies as designed', value: showDecimal(design.record.plies), fact: design.fact.id }]
          : []),
      ]
    case 'findings':
      return ofType(own, 'visual').flatMap(({ record, fact }) => [
        ...(record.findings ?? []).map((one) => ({
          label: one.place,
          value: `${one.kind}${one.size ? ` ${showKept(one.size)}` : ''}`,
          fact,
        })),
        ...(record.noFindings ? [{ label: 'nothing found', value: record.noFindings, fact }] : []),
      ])
    case 'design-envelope':
      return [
        ...defectValues(ground, ['holeAxial', 'holeHoop', 'diameters']),
        ...(design ? [{ label: 'design sheet', value: `rev ${design.record.revision}`, fact: design.fact.id }] : []),
      ]
    default:
      return own.map((one) => ({ label: recordWord(one), value: showMoment(one.observedAt), fact: one.fact }))
  }
}

function recordWord({ record }: OwnRecord): string {
  return record.type.replaceAll('-', ' ')
}

/** Readings of a quantity; a computed one is shown by the values that it was computed from. */
function readingInputs(own: readonly OwnRecord[], quantity: string): WorkingInput[] {
  if (quantity === 'dew-margin' || quantity === 'dew-point')
    return ofType(own, 'climate').flatMap(({ record, fact }) => [
      ...(record.air ? [input('air', record.air, fact)] : []),
      ...(record.humidity ? [input('relative humidity', record.humidity, fact)] : []),
      ...(record.steel ?? []).flatMap((one) =>
        one.reading ? [input(`steel at ${one.clock} o’clock`, one.reading, fact)] : [],
      ),
    ])
  if (quantity === 'tape-overlap')
    return ofType(own, 'tape-wrap').flatMap(({ record, fact }) => [
      ...(record.tapeWidth ? [input('width of the tape', record.tapeWidth, fact)] : []),
      ...(record.pitches ?? []).map((one, at) => input(`pitch P${at + 1}`, one, fact)),
    ])
  if (quantity === 'filler-over-hole' || quantity === 'filler-on-ring')
    return ofType(own, 'filler-thickness').flatMap(({ record, fact }) =>
      (record.after ?? [])
        .filter((one) => (one.mark === record.holeMark) === (quantity === 'filler-over-hole'))
        .flatMap((one) => {
          const before = record.before?.find((each) => each.mark === one.mark)
          return [
            ...(before ? [input(`${one.mark} before`, before.reading, fact)] : []),
            input(`${one.mark} after`, one.reading, fact),
          ]
        }),
    )
  return own.flatMap((one) =>
    one.yields.readings
      .filter((each) => each.quantity === quantity)
      .map((each) =>
        computedPlaces(quantity) === null
          ? input(each.mark, each.reading, one.fact)
          : { label: each.mark, value: showKept(each.reading), fact: one.fact },
      ),
  )
}

function limitInputs({ criterion: { rule } }: CriterionResult, ground: WorkingGround): WorkingInput[] {
  if (rule.kind === 'count' || !('min' in rule || 'max' in rule)) return []
  const design = designThen(ground.state, ground.attempt)
  const limits = [rule.kind === 'each' || rule.kind === 'mean' ? [rule.min, rule.max] : []].flat()
  return limits.flatMap((limit): WorkingInput[] => {
    if (limit?.from !== 'design' || !design || limit.value === 'defectLength') return []
    const given = design.record[limit.value]
    return given ? [input('from the design sheet', given, design.fact.id)] : []
  })
}

function tableInput(
  kind: string,
  rows: readonly { temp: Parameters<typeof showDecimal>[0]; minutes: Parameters<typeof showDecimal>[0] }[],
): WorkingInput[] {
  const shown = rows.map((row) => `${showDecimal(row.temp)} °C ${showDecimal(row.minutes)} min`).join(', ')
  return [{ label: `table, ${kind}`, value: shown, fact: null }]
}

function defectValues(
  { state }: WorkingGround,
  fields: readonly ('holeAxial' | 'holeHoop' | 'nominalWall' | 'diameters')[],
): WorkingInput[] {
  const words = { holeAxial: 'hole axial', holeHoop: 'hole hoop', nominalWall: 'nominal wall', diameters: 'diameter' }
  const found = state.points
    .flatMap((point) => point.attempts.flatMap((attempt) => attempt.records))
    .findLast((one) => one.overruledBy === null && one.record.type === 'defect')
  if (found?.record.type !== 'defect') return []
  const { record, fact } = found
  return fields.flatMap((field) => [record[field]].flat().map((one) => input(words[field], one, fact.id)))
}
