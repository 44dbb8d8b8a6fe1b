import type { FactId, StreamId } from '@/lib/domain/facts/fact'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import type { InstrumentState } from '@/lib/domain/fold/store-states'
import { certificateInForce, statusOn } from '@/lib/domain/judge/certificate-in-force'
import { type Measured, type Reading, showReadingUnit } from '@/lib/domain/reading'
import { dayOf, instantOf, type Moment, showMoment } from '@/lib/domain/time'
import { type ChainStep, factHref, missing, step } from './audit-chain-step'

type Check = { at: Moment; fact: FactId; text: string; isWrong: boolean }

/** Instrument, certificate of the day, and the checks on a reference piece before and after a reading. */
export function instrumentSteps(
  stream: StreamId,
  instrument: InstrumentState | null,
  at: Moment,
  state: RepairState | null,
): ChainStep[] {
  const name = stream.slice('instrument:'.length)
  if (!instrument) return [missing('Instrument', `${name} is not on record`)]
  const day = dayOf(at)
  const certificate = certificateInForce(instrument, day)
  const lapsed = instrument.certificates.filter((one) => statusOn(one, day) === 'overdue').at(-1)
  const checks = [...ownChecks(instrument), ...checksAtWork(stream, state)].sort(
    (a, b) => instantOf(a.at) - instantOf(b.at),
  )
  const before = checks.findLast((one) => instantOf(one.at) <= instantOf(at))
  const after = checks.find((one) => instantOf(one.at) > instantOf(at))
  const checkStep = (title: string, check: Check | undefined) =>
    check
      ? step(title, [
          { text: check.text, note: showMoment(check.at), href: factHref(check.fact), isWrong: check.isWrong },
        ])
      : missing(title, 'none on record')
  return [
    step('Instrument', [
      { text: `${instrument.number}, ${instrument.kind}`, href: `/instruments/${encodeURIComponent(name)}` },
      ...instrument.foundWrong.map((one) => ({
        text: `found wrong: ${one.body.how}`,
        note: showMoment(one.observedAt),
        href: factHref(one.id),
        isWrong: true,
      })),
    ]),
    certificate
      ? step('Certificate that day', [
          {
            text: `${certificate.body.certificate}, to ${certificate.body.dueOn}`,
            ...(certificate.body.laboratory ? { note: certificate.body.laboratory } : {}),
            href: factHref(certificate.id),
          },
        ])
      : missing(
          'Certificate that day',
          lapsed ? `${lapsed.body.certificate} lapsed on ${lapsed.body.dueOn}` : `none in force on ${day}`,
          lapsed ? factHref(lapsed.id) : null,
        ),
    checkStep('Check before', before),
    checkStep('Check after', after),
  ]
}

function ownChecks(instrument: InstrumentState): Check[] {
  return instrument.checks.map(({ observedAt, id, body }) => ({
    at: observedAt,
    fact: id,
    text: `${checkWords(body)}, ${body.coverage}: ${body.result} tolerance`,
    isWrong: body.result === 'outside',
  }))
}

/** Checks keyed at the repair itself, with the decision taken on them. */
function checksAtWork(stream: StreamId, state: RepairState | null): Check[] {
  const records = (state?.points ?? []).flatMap((point) => point.attempts.flatMap((attempt) => attempt.records))
  return records.flatMap(({ fact, record }) =>
    record.type !== 'instruments'
      ? []
      : record.instruments
          .filter((line) => line.instrument === stream)
          .map((line) => ({
            at: fact.observedAt,
            fact: fact.id,
            text: `${checkWords(line)}, ${line.coverage === 'none' ? 'no coverage' : line.coverage}: ${line.decision}${line.reason ? `, ${line.reason}` : ''} (point ${fact.body.point}, check ${line.when} the work)`,
            isWrong: line.decision === 'refused',
          })),
  )
}

function checkWords({
  read,
  reference,
  tolerance,
}: {
  read?: Reading | undefined
  reference?: Measured | undefined
  tolerance?: Measured | undefined
}): string {
  if (!read || !reference) return 'no figures keyed'
  return `${showReadingUnit(read)} on ${showReadingUnit(reference)}${tolerance ? ` ± ${showReadingUnit(tolerance)}` : ''}`
}
