import { showDecimal } from '../decimal'
import type { FactId } from '../facts/fact'
import type { Measured, Reading } from '../reading'
import { showKept } from '../records/show-value'
import type { Rule } from '../specification'
import { showMoment } from '../time'
import { type OwnRecord, ofType, type WorkingInput } from './working'

/** A reading as an input, as recorded and with its metric figure. */
export function input(label: string, value: Reading | Measured, fact: FactId | null): WorkingInput {
  return { label, value: showKept(value), fact }
}

/** Masses of every mix, by batch. */
export function mixInputs(own: readonly OwnRecord[]): WorkingInput[] {
  return [...ofType(own, 'filler-mix'), ...ofType(own, 'resin-mix')].flatMap(({ record, fact }) => [
    ...(record.partA ?? []).flatMap((part) =>
      part.amount ? [input(`${record.mixNo ?? 'mix'} part A, ${part.batch.slice(6)}`, part.amount, fact)] : [],
    ),
    ...(record.partB ?? []).flatMap((part) =>
      part.amount ? [input(`${record.mixNo ?? 'mix'} part B, ${part.batch.slice(6)}`, part.amount, fact)] : [],
    ),
    ...(record.proportion ? [{ label: `${record.mixNo ?? 'mix'} by`, value: record.proportion, fact }] : []),
  ])
}

/** Times and resin temperature of every mix. */
export function mixTimes(own: readonly OwnRecord[]): WorkingInput[] {
  return [...ofType(own, 'filler-mix'), ...ofType(own, 'resin-mix')].flatMap(({ record, fact }) => [
    ...(record.startedAt ? [{ label: `${record.mixNo} mixed from`, value: showMoment(record.startedAt), fact }] : []),
    ...(record.usedBy ? [{ label: `${record.mixNo} used by`, value: showMoment(record.usedBy), fact }] : []),
    ...(record.resinTemp ? [input(`${record.mixNo} resin`, record.resinTemp, fact)] : []),
  ])
}

/** Times and surface temperature of every roll of tape. */
export function rollTimes(own: readonly OwnRecord[]): WorkingInput[] {
  return ofType(own, 'tape-roll').flatMap(({ record, fact }) => [
    ...(record.soakStart
      ? [{ label: `roll ${record.rollNo} soaked from`, value: showMoment(record.soakStart), fact }]
      : []),
    ...(record.wrapEnd ? [{ label: `roll ${record.rollNo} wrapped by`, value: showMoment(record.wrapEnd), fact }] : []),
    ...(record.surface ? [input(`roll ${record.rollNo} surface`, record.surface, fact)] : []),
  ])
}

type PlugField =
  | 'pressedAt'
  | 'judgedHardAt'
  | 'ambient'
  | 'puttyUsed'
  | 'girths'
  | 'bandCut'
  | 'bandBuild'
  | 'bandThickness'
  | 'bandTail'
const PLUG_WORDS: Record<PlugField, string> = {
  pressedAt: 'pressed on',
  judgedHardAt: 'judged hard',
  ambient: 'ambient',
  puttyUsed: 'putty used',
  girths: 'girth',
  bandCut: 'band cut to',
  bandBuild: 'build',
  bandThickness: 'band thickness',
  bandTail: 'tail',
}

/** Values of a plug, plate and band. */
export function plugValues(own: readonly OwnRecord[], fields: readonly PlugField[]): WorkingInput[] {
  return ofType(own, 'arrest').flatMap(({ record, fact }) => {
    const { arrest } = record
    if (arrest?.method !== 'plug, plate and band') return []
    return fields.flatMap((field): WorkingInput[] => {
      const value = arrest[field]
      if (value === undefined) return []
      if (typeof value === 'string') return [{ label: PLUG_WORDS[field], value: showMoment(value), fact }]
      return [value].flat().map((one) => input(PLUG_WORDS[field], one, fact))
    })
  })
}

/** Every probe with the span of its log. */
export function cureInputs(own: readonly OwnRecord[]): WorkingInput[] {
  return ofType(own, 'cure').flatMap(({ record, fact }) =>
    (record.probes ?? []).map((probe) => {
      const [first, last] = [probe.series[0], probe.series.at(-1)]
      return {
        label: `${probe.clock} o’clock${record.postCure === 'yes' ? ', post-cure' : ''}`,
        value: `${probe.series.length} temperatures${first && last ? ` ${showMoment(first.at)} to ${showMoment(last.at)}` : ''}`,
        fact,
      }
    }),
  )
}

/** Every reading of a pressure test. */
export function pressureInputs(own: readonly OwnRecord[]): WorkingInput[] {
  return ofType(own, 'pressure-test').flatMap(({ record, fact }) =>
    (record.readings ?? []).flatMap((one) => [
      ...(one.pressure ? [input(`${one.at?.slice(11, 16) ?? '?'} pressure`, one.pressure, fact)] : []),
      ...(one.secondPressure ? [input(`${one.at?.slice(11, 16) ?? '?'} second gauge`, one.secondPressure, fact)] : []),
      ...(one.steel ? [input(`${one.at?.slice(11, 16) ?? '?'} steel`, one.steel, fact)] : []),
    ]),
  )
}

type Correction = Extract<Rule, { kind: 'pressure-drop' }>['correction']

/** The specification’s figures for the correction of a pressure drop. */
export function correctionInputs(correction: Correction): WorkingInput[] {
  const values: [string, string][] = [
    ['E', `${showDecimal(correction.modulusMPa)} MPa`],
    ['ν', showDecimal(correction.poisson)],
    ['α', `${correction.alphaPerK} 1/K`],
    ['β', `${correction.betaPerK} 1/K`],
    ['K', `${showDecimal(correction.bulkModulusMPa)} MPa`],
    ['ends', correction.ends],
  ]
  return values.map(([label, value]) => ({ label: `${label}, specification`, value, fact: null }))
}
