import type { StreamId } from '../facts/fact'
import type { FactOf } from '../facts/fact-kinds'
import type { InstrumentState } from '../fold/store-states'
import { dayOf, instantOf, type Moment } from '../time'
import { calibratedOn, certificateInForce } from './certificate-in-force'
import { minusDecimal } from './exact-units'
import type { JudgeFrame, PointFrame, Taken } from './frame'
import type { RuleOutcome } from './outcome'
import type { Question } from './verdict'

type FoundWrong = FactOf<'found-wrong'>

/**
 * A question for every instrument found wrong that took one of these readings after its last good full-scale check. Where the error is known in the
 * readings' own unit it is taken off exactly and the rule judged again; the readings themselves stay as read.
 */
export function correctedQuestions(
  frame: JudgeFrame,
  readings: readonly Taken[],
  judge: (list: Taken[]) => RuleOutcome,
): Question[] {
  const used = new Set(readings.flatMap((one) => (one.instrument ? [one.instrument] : [])))
  return [...used].flatMap((stream) => {
    const instrument = frame.context.instruments[stream]
    return (instrument?.foundWrong ?? []).flatMap((fact) => {
      const doubted = readings.filter(
        (one) => one.instrument === stream && instrument && isDoubted(instrument, fact, one.at),
      )
      return doubted.length === 0 ? [] : [questionOf(fact, readings, new Set(doubted), judge)]
    })
  })
}

/** True when a reading at a moment falls between the last good full-scale check and the discovery. */
export function isDoubted(instrument: InstrumentState, fact: FoundWrong, at: Moment): boolean {
  return instantOf(at) <= instantOf(fact.observedAt) && instantOf(at) > lastGoodCheck(instrument, fact)
}

/** Instant of the last good full-scale check before the discovery, else the start of the day of calibration, else the beginning of time. */
function lastGoodCheck(instrument: InstrumentState, fact: FoundWrong): number {
  const named = instrument.checks.find((check) => check.id === fact.body.lastGoodFullCheck)
  if (named) return instantOf(named.observedAt)
  const good = instrument.checks.filter(
    (check) =>
      check.body.coverage === 'full scale' &&
      check.body.result === 'within' &&
      instantOf(check.observedAt) < instantOf(fact.observedAt),
  )
  if (good.length > 0) return Math.max(...good.map((check) => instantOf(check.observedAt)))
  const certificate = certificateInForce(instrument, dayOf(fact.observedAt))
  return certificate ? Date.parse(`${calibratedOn(certificate)}T00:00:00Z`) : Number.NEGATIVE_INFINITY
}

function questionOf(
  fact: FoundWrong,
  readings: readonly Taken[],
  doubted: ReadonlySet<Taken>,
  judge: (list: Taken[]) => RuleOutcome,
): Question {
  const corrected = correctedReadings(fact, readings, doubted)
  const again = corrected ? judge(corrected) : null
  return {
    cause: fact.id,
    causeKind: 'instrument found wrong',
    stream: fact.stream,
    since: fact.observedAt,
    ...(again ? { corrected: { found: again.found, verdict: again.verdict } } : {}),
  }
}

function correctedReadings(fact: FoundWrong, readings: readonly Taken[], doubted: ReadonlySet<Taken>): Taken[] | null {
  const error = fact.body.error
  if (!error || [...doubted].some(({ reading }) => 'unit' in reading && reading.unit !== error.unit)) return null
  return readings.map((one) =>
    doubted.has(one) && 'digits' in one.reading
      ? { ...one, reading: { ...one.reading, ...minusDecimal(one.reading, error) } }
      : one,
  )
}

/** A question for every instrument found wrong among some uses that fall in the doubtful time, without corrected figures. */
export function instrumentQuestions(frame: PointFrame, uses: readonly { of: StreamId; at: Moment }[]): Question[] {
  const questions = uses.flatMap((use): Question[] => {
    const instrument = frame.context.instruments[use.of]
    if (!instrument) return []
    return instrument.foundWrong
      .filter((fact) => isDoubted(instrument, fact, use.at))
      .map((fact) => ({
        cause: fact.id,
        causeKind: 'instrument found wrong',
        stream: fact.stream,
        since: fact.observedAt,
      }))
  })
  return [...new Map(questions.map((one) => [one.cause, one])).values()]
}
