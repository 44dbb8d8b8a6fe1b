import { streamName } from '../facts/fact'
import type { JudgeContext } from '../judge/judge-context'
import type { Unit } from '../reading'
import type { CalendarDay } from '../time'

/** What a form's lists offer, with why a batch or an instrument is barred today. Barred ones can still be named: the record is of what was done. */
export type CaptureChoices = {
  batches: { id: string; label: string; role: string; note: string; isBarred: boolean }[]
  instruments: { id: string; label: string; measures: Unit[]; note: string; isBarred: boolean }[]
  persons: { id: string; label: string }[]
}

/** The choices of a form on a day. */
export function captureChoices(judge: JudgeContext, today: CalendarDay): CaptureChoices {
  return {
    batches: Object.values(judge.batches).map((batch) => {
      const isExpired = batch.expiresOn !== null && batch.expiresOn < today
      const why = batch.recalled
        ? 'recalled'
        : batch.isQuarantined
          ? 'in quarantine'
          : isExpired
            ? `expired on ${batch.expiresOn}`
            : null
      return {
        id: batch.stream,
        label: `${batch.number} ${batch.received.product}`,
        role: batch.received.role,
        note: why ?? (batch.expiresOn ? `in date to ${batch.expiresOn}` : 'no expiry stated'),
        isBarred: why !== null,
      }
    }),
    instruments: Object.values(judge.instruments).map((one) => {
      const inForce = one.certificates.filter((certificate) => certificate.body.dueOn >= today).at(-1)
      const why = one.isQuarantined ? 'in quarantine' : inForce ? null : 'no certificate in date today'
      return {
        id: one.stream,
        label: `${one.number} ${one.kind}`,
        measures: [],
        note: why ?? `certificate ${inForce?.body.certificate} in date to ${inForce?.body.dueOn}`,
        isBarred: why !== null,
      }
    }),
    persons: Object.values(judge.persons).map((person) => ({
      id: streamName(person.stream),
      label: `${person.name}, ${person.title}`,
    })),
  }
}
