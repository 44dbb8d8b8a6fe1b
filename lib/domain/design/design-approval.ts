import type { FactId, PersonId } from '../facts/fact'
import type { ReleaseState, RepairState, SignatureState } from '../fold/repair-state'
import type { PointNo } from '../specification'
import type { Moment } from '../time'

export type DesignApproval = { by: PersonId; name: string; at: Moment; state: SignatureState['state'] }

/** One revision of the design sheet with who recorded it, and which engineers approved it. */
export type DesignRevision = {
  fact: FactId
  point: PointNo
  attempt: number
  sheetNo: string
  revision: number
  recordedBy: PersonId
  recordedAt: Moment
  isInForce: boolean
  isOverruled: boolean
  isCorrected: boolean
  approvals: DesignApproval[]
  /** Releases of the point's hold by the engineer. */
  released: ReleaseState[]
  /** The record, its corrections, and the defects of the attempt: what an approval covers. */
  covers: FactId[]
}

/** Every revision of the design sheet, newest first. Approved means: an engineer's signature with that meaning covers the record, and it is not broken by a correction. */
export function designRevisions(state: RepairState): DesignRevision[] {
  const all = state.points.flatMap((point) =>
    point.attempts.flatMap((attempt) =>
      attempt.records.flatMap((one): Omit<DesignRevision, 'isInForce'>[] => {
        if (one.record.type !== 'design') return []
        const own = [one.fact.id, ...one.corrections.map((each) => each.id)]
        const found = attempt.records.filter((each) => each.record.type === 'defect' && each.overruledBy === null)
        return [
          {
            fact: one.fact.id,
            point: point.no,
            attempt: attempt.attempt,
            sheetNo: one.record.sheetNo,
            revision: one.record.revision,
            recordedBy: one.fact.observedBy,
            recordedAt: one.fact.observedAt,
            isOverruled: one.overruledBy !== null,
            isCorrected: one.corrections.length > 0,
            approvals: attempt.signatures
              .filter(
                ({ fact: { body } }) =>
                  body.meaning === 'approved' &&
                  body.role === 'engineer' &&
                  body.covers.some((each) => each.fact === one.fact.id),
              )
              .map((sign) => ({
                by: sign.fact.observedBy,
                name: sign.fact.body.name,
                at: sign.fact.observedAt,
                state: own.every((id) => sign.fact.body.covers.some((each) => each.fact === id))
                  ? sign.state
                  : 'broken',
              })),
            released: attempt.releases.filter((each) => each.fact.body.party === 'engineer'),
            covers: [...own, ...found.flatMap((each) => [each.fact.id, ...each.corrections.map((fix) => fix.id)])],
          },
        ]
      }),
    ),
  )
  const governing = all
    .filter((one) => !one.isOverruled)
    .reduce<(typeof all)[number] | null>(
      (latest, one) => (latest && one.revision < latest.revision ? latest : one),
      null,
    )
  return all.map((one) => ({ ...one, isInForce: one === governing })).reverse()
}

/** Whether a revision stands approved today: one of its approvals is unbroken. */
export function isApproved(revision: DesignRevision): boolean {
  return revision.approvals.some((one) => one.state === 'stands')
}
