import { conformanceProbability } from '@/lib/calc/decision-rule'
import { isRefused } from '@/lib/calc/refusal'
import { type Fraction, fractionOf, toNumber } from '../decimal'
import { certificateInForce } from '../judge/certificate-in-force'
import { boundsOf } from '../judge/exact-limit'
import { convertDifference, convertExact } from '../judge/exact-units'
import type { YieldedReading } from '../judge/judge-context'
import { showExact } from '../judge/show-exact'
import type { CriterionResult } from '../judge/verdict'
import { showReading, showReadingUnit, showUnit, type Unit } from '../reading'
import type { Specification } from '../specification'
import { dayOf } from '../time'
import { designThen } from './design-then'
import { ownRecords, type WorkingGround } from './working'

const COVERAGE = 2

/** The specification body that a result was judged by; the one in force now when the revision is not at hand. */
export function specificationOf(result: CriterionResult, { state }: WorkingGround): Specification | null {
  const issued = state.specificationRevisions.find((one) => one.body.revision === result.revision)
  return issued?.body.body ?? state.specification?.body ?? null
}

type Judged = {
  isGuarded: boolean
  worst: (YieldedReading & { at: string }) | null
  bounds: ReturnType<typeof boundsOf>
  unit: Unit | null
  spread: Spread | null
  /** U in the unit of the limit. */
  width: Fraction | null
}

/** What the decision rule of a criterion stands on; null where the criterion compares no reading with a limit. */
function judgedBy(result: CriterionResult, ground: WorkingGround): Judged | null {
  const { rule } = result.criterion
  const specification = specificationOf(result, ground)
  if (!specification || (rule.kind !== 'each' && rule.kind !== 'mean')) return null
  const basis = { design: designThen(ground.state, ground.attempt)?.record ?? null, defect: ground.state.defect }
  const bounds = boundsOf(rule, basis)
  const readings = ownRecords(ground.attempt)
    .flatMap((one) => one.yields.readings.map((each) => ({ ...each, at: each.at ?? one.observedAt })))
    .filter((one) => one.quantity === rule.quantity)
  const atWorst = readings.filter((one) => one.mark === result.figures.worstMark)
  const worst =
    atWorst.find((one) => showReading(one.reading) === result.figures.worst) ?? atWorst[0] ?? readings[0] ?? null
  const unit = (bounds.min ?? bounds.max)?.unit ?? null
  const spread = worst && uncertaintyOf(worst, ground)
  const width = spread && unit ? convertDifference(fractionOf(spread.value), spread.value.unit, unit) : null
  return { isGuarded: specification.decisionRule === 'guard band', worst, bounds, unit, spread, width }
}

/** The decision rule in a few words, for beside the limit; null where the criterion compares no reading with a limit. */
export function decisionWords(result: CriterionResult, ground: WorkingGround): string | null {
  const judged = judgedBy(result, ground)
  if (!judged) return null
  if (!judged.isGuarded) return 'simple acceptance'
  return judged.width && judged.unit
    ? `guard band ${showExact(judged.width)} ${showUnit(judged.unit)}`
    : 'guard band, uncertainty not known'
}

/**
 * The decision rule as it applies to a criterion, in sentences: simple acceptance, or the guard band with its width; and for the worst reading the probability
 * that the true value lies inside the limits, where the certificate in force states its uncertainty.
 */
export function decisionShown(result: CriterionResult, ground: WorkingGround): string[] {
  const judged = judgedBy(result, ground)
  if (!judged) return []
  const { isGuarded, worst, bounds, unit, spread, width } = judged
  const first = isGuarded
    ? 'Guard band: a reading passes only inside the limit by the expanded uncertainty U, fails only outside it by U, and is not proven between (ISO 14253-1, JCGM 106).'
    : 'Simple acceptance: the reading itself is compared with the limit; the limit passes.'
  if (!worst || !unit) return [first]
  if (!spread)
    return [
      first,
      isGuarded ? 'The uncertainty of the instrument is not on its certificate: not proven.' : NO_UNCERTAINTY,
    ]
  if (!width) return [first, `U = ${showReadingUnit(spread.value)} is not in the unit of the limit.`]
  const passes = [
    bounds.min ? `from ${showExact(sum(bounds.min.value, width, 1n))}` : '',
    bounds.max ? `up to ${showExact(sum(bounds.max.value, width, -1n))}` : '',
  ].filter(Boolean)
  const guard = isGuarded
    ? [
        `Guard band U = ${showExact(width)} ${showUnit(unit)} (k = ${COVERAGE}, certificate ${spread.certificate}): passes ${passes.join(', ')} ${showUnit(unit)}.`,
      ]
    : []
  if (DERIVED.has(worst.quantity))
    return [first, ...guard, 'Probability of conformance: not computed, the figure comes from more than one reading.']
  return [first, ...guard, ...probabilityOf(worst, spread, bounds, result.criterion.rule.kind)]
}

/** Quantities computed from several readings: the uncertainty of one gauge is not theirs. */
const DERIVED: ReadonlySet<string> = new Set([
  'dew-margin',
  'dew-point',
  'tape-overlap',
  'filler-over-hole',
  'filler-on-ring',
])

const NO_UNCERTAINTY = 'Probability of conformance: not computed, the certificate states no uncertainty.'

type Spread = { value: NonNullable<ReturnType<typeof spreadOf>>; certificate: string }

function spreadOf(reading: YieldedReading & { at: string }, ground: WorkingGround) {
  const instrument = reading.instrument ? ground.instruments[reading.instrument] : undefined
  return instrument ? certificateInForce(instrument, dayOf(reading.at))?.body.expandedUncertainty : undefined
}

function uncertaintyOf(reading: YieldedReading & { at: string }, ground: WorkingGround): Spread | null {
  const value = spreadOf(reading, ground)
  const instrument = reading.instrument ? ground.instruments[reading.instrument] : undefined
  const certificate = instrument && certificateInForce(instrument, dayOf(reading.at))?.body.certificate
  return value && certificate ? { value, certificate } : null
}

function probabilityOf(
  worst: YieldedReading,
  spread: Spread,
  bounds: ReturnType<typeof boundsOf>,
  kind: string,
): string[] {
  const unit = (bounds.min ?? bounds.max)?.unit
  if (kind !== 'each' || !unit || worst.reading.kind !== 'number') return []
  const value = convertExact(fractionOf(worst.reading), worst.reading.unit, unit)
  const width = convertDifference(fractionOf(spread.value), spread.value.unit, unit)
  if (!value || !width) return []
  const answer = conformanceProbability({
    x: toNumber(value),
    lower: bounds.min ? toNumber(bounds.min.value) : null,
    upper: bounds.max ? toNumber(bounds.max.value) : null,
    expandedU: toNumber(width),
    k: COVERAGE,
  })
  if (isRefused(answer)) return []
  return [
    `Probability of conformance at ${worst.mark}: Φ of ${showReadingUnit(worst.reading)} with u = U/${COVERAGE} = ${showExact({ numerator: width.numerator, denominator: width.denominator * BigInt(COVERAGE) })} ${showUnit(unit)} gives ${(Math.floor(answer.p * 1000) / 10).toFixed(1)} % (JCGM 106).`,
  ]
}

function sum(
  limit: { numerator: bigint; denominator: bigint },
  width: { numerator: bigint; denominator: bigint },
  sign: bigint,
) {
  return {
    numerator: limit.numerator * width.denominator + sign * width.numerator * limit.denominator,
    denominator: limit.denominator * width.denominator,
  }
}
