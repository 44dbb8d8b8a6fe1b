import { compareFractions, fractionOf, showDecimal } from '../decimal'
import { quarantineAt } from '../fold/quarantines'
import type { InstrumentState } from '../fold/store-states'
import { showReadingUnit, showUnit } from '../reading'
import type { Rule } from '../specification'
import { type CalendarDay, dayOf, instantOf, showMoment } from '../time'
import { type CertificateFact, certificateInForce, statusOn } from './certificate-in-force'
import { instrumentQuestions } from './corrected-questions'
import { convertDifference, convertExact, minusFraction } from './exact-units'
import { type JudgeFrame, recordsOfType, type TakenUse, usesOf } from './frame'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'

/**
 * Every instrument used had a certificate in force on the day of use that covers its readings, and was not refused at its check. A certificate that expired
 * since, or a later one, changes nothing, nor does a quarantine after the use. An instrument found wrong later puts the result in question.
 */
export function judgeInstruments(_rule: Extract<Rule, { kind: 'instruments-valid' }>, frame: JudgeFrame): RuleOutcome {
  const uses = usesOf(frame, (use) => use.of.startsWith('instrument:') && use.role !== 'refused')
  if (uses.length === 0) return notProven(frame, 'no-instrument', 'no instrument recorded')
  const distinct = [...new Map(uses.map((use) => [`${use.of} ${dayOf(use.at)}`, use])).values()]
  const checks = [
    ...distinct.flatMap((use) => checkUse(use, frame)),
    ...quarantineChecks(uses, frame),
    ...rangeChecks(frame),
    ...referenceChecks(frame),
  ]
  const found = [...new Set(distinct.map((use) => frame.context.instruments[use.of]?.number ?? use.of))].join(', ')
  return outcomeOf(checks, found, {
    questions: instrumentQuestions(frame, uses),
    working: distinct.map((use) => workingOf(use, frame)),
  })
}

function checkUse(use: TakenUse, frame: JudgeFrame): Check[] {
  const instrument = frame.context.instruments[use.of]
  if (!instrument)
    return [
      { verdict: 'not proven', finding: findingOf(frame, 'instrument-unknown', { mark: use.of, facts: [use.fact] }) },
    ]
  const checks: Check[] = [checkCertificate(use, instrument, frame)]
  if (wasRefused(use, frame))
    checks.push({
      verdict: 'fail',
      finding: findingOf(frame, 'instrument-refused', { mark: instrument.number, facts: [use.fact] }),
    })
  return checks
}

/** Nothing was read with an instrument while it stood in quarantine, to the moment: one finding for each quarantine. */
function quarantineChecks(uses: readonly TakenUse[], frame: JudgeFrame): Check[] {
  const checks = uses.flatMap((use): [string, Check][] => {
    const instrument = frame.context.instruments[use.of]
    const quarantine = instrument ? quarantineAt(instrument.quarantines, use.at) : null
    if (!instrument || !quarantine) return []
    const finding = findingOf(frame, 'instrument-quarantined', {
      mark: instrument.number,
      found: showMoment(use.at),
      limit: showMoment(quarantine.from),
      detail: quarantine.reason,
      facts: [use.fact, quarantine.fact],
    })
    return [[`${use.of} ${quarantine.fact}`, { verdict: 'fail', finding }]]
  })
  return [...new Map(checks.toReversed()).values()].toReversed()
}

function checkCertificate(use: TakenUse, instrument: InstrumentState, frame: JudgeFrame): Check {
  const day = dayOf(use.at)
  if (certificateInForce(instrument, day)) return { verdict: 'pass' }
  const lapsed = instrument.certificates
    .filter((one) => statusOn(one, day) === 'overdue')
    .toSorted((a, b) => b.body.dueOn.localeCompare(a.body.dueOn))[0]
  const parts = { mark: instrument.number, found: day, facts: [use.fact, lapsed?.id ?? null] }
  if (!lapsed) return { verdict: 'not proven', finding: findingOf(frame, 'certificate-missing', parts) }
  return {
    verdict: 'fail',
    finding: findingOf(frame, 'certificate-lapsed', {
      ...parts,
      limit: lapsed.body.dueOn,
      detail: lapsed.body.certificate,
    }),
  }
}

/** The last decision on the instrument at its check, before it was used, was to refuse it. */
function wasRefused(use: TakenUse, frame: JudgeFrame): boolean {
  const checks = recordsOfType([...frame.context.otherRecords, ...frame.context.records], 'instruments')
  const decisions = checks.flatMap(({ record, judged }) =>
    (record.instruments ?? [])
      .filter((line) => line.instrument === use.of && instantOf(judged.observedAt) <= instantOf(use.at))
      .map((line) => ({ decision: line.decision, at: instantOf(judged.observedAt) })),
  )
  return decisions.sort((a, b) => a.at - b.at).at(-1)?.decision === 'refused'
}

/** Numbers read with an instrument lie in the range of the certificate then in force, where it states one in a comparable unit. */
function rangeChecks(frame: JudgeFrame): Check[] {
  const inForce = new Map<string, CertificateFact | null>()
  const certificateOn = (instrument: InstrumentState, day: CalendarDay): CertificateFact | null => {
    const key = `${instrument.stream} ${day}`
    const known = inForce.get(key)
    if (known !== undefined) return known
    const certificate = certificateInForce(instrument, day)
    inForce.set(key, certificate)
    return certificate
  }
  return frame.own.flatMap(({ judged, yields }) =>
    yields.readings.flatMap((one): Check[] => {
      const instrument = one.instrument ? frame.context.instruments[one.instrument] : undefined
      const certificate = instrument ? certificateOn(instrument, dayOf(one.at ?? judged.observedAt)) : null
      const range = certificate?.body.range
      if (!range || !instrument || one.reading.kind !== 'number') return []
      const value = convertExact(fractionOf(one.reading), one.reading.unit, range.unit)
      if (
        !value ||
        (compareFractions(value, fractionOf(range.min)) >= 0 && compareFractions(value, fractionOf(range.max)) <= 0)
      )
        return []
      const limit = `${showDecimal(range.min)} to ${showDecimal(range.max)} ${showUnit(range.unit)}`
      return [
        {
          verdict: 'fail',
          finding: findingOf(frame, 'outside-certified-range', {
            mark: one.mark,
            found: showReadingUnit(one.reading),
            limit,
            detail: instrument.number,
            facts: [judged.fact],
          }),
        },
      ]
    }),
  )
}

/** The check on a reference piece lies within its tolerance, for every instrument taken. */
function referenceChecks(frame: JudgeFrame): Check[] {
  return recordsOfType(frame.context.records, 'instruments').flatMap(({ record, judged }) =>
    (record.instruments ?? []).flatMap((line): Check[] => {
      if (line.decision === 'refused' || !line.reference || !line.tolerance || line.read?.kind !== 'number') return []
      const read = convertExact(fractionOf(line.read), line.read.unit, line.reference.unit)
      const tolerance = convertDifference(fractionOf(line.tolerance), line.tolerance.unit, line.reference.unit)
      const parts = {
        mark: frame.context.instruments[line.instrument]?.number ?? line.instrument,
        found: showReadingUnit(line.read),
        limit: `${showReadingUnit(line.reference)} ± ${showReadingUnit(line.tolerance)}`,
        facts: [judged.fact],
      }
      if (!read || !tolerance) return [{ verdict: 'not proven', finding: findingOf(frame, 'unit-differs', parts) }]
      const off = minusFraction(read, fractionOf(line.reference))
      const size = off.numerator < 0n ? { ...off, numerator: -off.numerator } : off
      return compareFractions(size, tolerance) <= 0
        ? []
        : [{ verdict: 'fail', finding: findingOf(frame, 'check-outside-tolerance', parts) }]
    }),
  )
}

function workingOf(use: TakenUse, frame: JudgeFrame): string {
  const instrument = frame.context.instruments[use.of]
  const certificate: CertificateFact | null = instrument ? certificateInForce(instrument, dayOf(use.at)) : null
  return `${instrument?.number ?? use.of} on ${dayOf(use.at)}: ${certificate ? `${certificate.body.certificate} to ${certificate.body.dueOn}` : 'no certificate in force'}`
}
