import { calibrationStatus } from '@/lib/calc/calibration'
import { isRefused } from '@/lib/calc/refusal'
import type { FactOf } from '../facts/fact-kinds'
import type { InstrumentState } from '../fold/store-states'
import { type CalendarDay, dayOf } from '../time'

export type CertificateFact = FactOf<'certificate-recorded'>

/**
 * The certificate in force on a day, both end days included; the latest calibrated where several are. Certificates recorded later do not displace it, and one
 * that expired since still counts. A certificate without its calibration day counts from the day it was put on record, since it existed by then.
 */
export function certificateInForce(instrument: InstrumentState, day: CalendarDay): CertificateFact | null {
  const valid = instrument.certificates.filter((one) => statusOn(one, day) === 'valid')
  return valid.toSorted((a, b) => calibratedOn(b).localeCompare(calibratedOn(a)))[0] ?? null
}

/** How one certificate stands on a day; `unknown` when its days contradict each other. */
export function statusOn(
  certificate: CertificateFact,
  day: CalendarDay,
): 'valid' | 'overdue' | 'not_yet_calibrated' | 'unknown' {
  const answer = calibrationStatus({
    onDay: day,
    calibratedDay: calibratedOn(certificate),
    dueDay: certificate.body.dueOn,
  })
  return isRefused(answer) ? 'unknown' : answer.status
}

/** The day from which a certificate counts. */
export function calibratedOn(certificate: CertificateFact): CalendarDay {
  return certificate.body.calibratedOn ?? dayOf(certificate.observedAt)
}
