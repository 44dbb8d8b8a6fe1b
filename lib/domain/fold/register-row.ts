import { showDecimal } from '../decimal'
import type { StreamId } from '../facts/fact'
import { showReadingUnit } from '../reading'
import type { CalendarDay, Moment } from '../time'
import type { RepairState, RepairStatus } from './repair-state'

/** One row of the register of repairs: for the repair's whole life. Null is "not recorded", never a default. */
export type RegisterRow = {
  repair: StreamId
  number: string
  registerNo: string | null
  label: string | null
  line: string
  lineTitle: string
  datum: string
  stationFromDatum: string
  clock: string
  clockView: string
  defectKind: string | null
  cause: string | null
  /** Internal corrosion and erosion go on under a wrap. */
  isCauseActive: boolean | null
  className: string | null
  lifeYears: string | null
  appliedOn: CalendarDay | null
  acceptedAt: Moment | null
  lifeEndsOn: CalendarDay | null
  restrictions: string[]
  hasConcession: boolean
  inQuestion: boolean
  openConditions: number
  openNonconformances: string[]
  lastInspection: { on: CalendarDay; result: string } | null
  nextInspectionOn: CalendarDay | null
  status: RepairStatus
  dossierRevision: number | null
  isRevisionDue: boolean
  /** Extent of the wrap from the datum in mm, for a warning about repairs over or beside each other; null while not designed. */
  extent: { fromMm: number; toMm: number } | null
}

/** The register row of a repair. A concession and a question stay visible whatever the status says. */
export function registerRowOf(state: RepairState): RegisterRow {
  const records = state.points
    .flatMap((point) => point.attempts.flatMap((attempt) => attempt.records))
    .filter((one) => one.overruledBy === null)
  const handover = records.flatMap(({ record }) => (record.type === 'handover' ? [record] : [])).at(-1)
  const inspection = records
    .flatMap(({ record }) => (record.type === 'in-service' ? [record] : []))
    .sort((a, b) => (a.inspectedOn < b.inspectedOn ? -1 : 1))
    .at(-1)
  const lastPly = records
    .flatMap(({ record }) =>
      record.type === 'ply' ? [record.endedAt] : record.type === 'tape-roll' ? [record.wrapEnd] : [],
    )
    .sort((a, b) => Date.parse(a) - Date.parse(b))
    .at(-1)
  const { opened, acceptance, defect, design } = state
  const station = toMm(opened.body.stationFromDatum)
  const half = design ? lengthMm(design.totalLength) / 2 : null
  return {
    repair: state.stream,
    number: state.number,
    registerNo: handover?.registerNo ?? null,
    label: handover?.labelNo ?? null,
    line: opened.body.line,
    lineTitle: opened.body.lineTitle,
    datum: opened.body.datum,
    stationFromDatum: showDecimal(opened.body.stationFromDatum),
    clock: opened.body.clock,
    clockView: opened.body.clockView,
    defectKind: defect?.defectKind ?? null,
    cause: defect?.cause ?? null,
    isCauseActive:
      defect && defect.cause !== 'unknown' ? defect.cause === 'internal corrosion' || defect.cause === 'erosion' : null,
    className: opened.body.className ?? null,
    lifeYears: acceptance?.lifeYears ?? (design ? showReadingUnit(design.lifeYears) : null),
    appliedOn: lastPly?.slice(0, 10) ?? null,
    acceptedAt: acceptance?.fact.observedAt ?? null,
    lifeEndsOn: acceptance?.lifeEndsOn ?? null,
    restrictions: [...new Set([...(acceptance?.fact.body.restrictions ?? []), ...(handover?.restrictions ?? [])])],
    hasConcession:
      acceptance?.fact.body.kind === 'accepted under concession' ||
      state.points.some((point) => point.attempts.some((one) => one.conceded !== null)),
    inQuestion: state.points.some((point) =>
      point.attempts.some((one) => one.questions.some((question) => question.decision === undefined)),
    ),
    openConditions: acceptance?.openConditions.length ?? 0,
    openNonconformances: state.nonconformances.filter((one) => one.isOpen).map((one) => one.number),
    lastInspection: inspection ? { on: inspection.inspectedOn, result: inspection.result } : null,
    nextInspectionOn: acceptance?.nextInspectionOn ?? null,
    status: state.status,
    dossierRevision: state.issues.at(-1)?.fact.body.revision ?? null,
    isRevisionDue: state.revisionDue,
    extent: half === null ? null : { fromMm: station - half, toMm: station + half },
  }
}

function toMm(value: { digits: number; scale: number }): number {
  return value.digits / 10 ** value.scale
}

function lengthMm(value: { digits: number; scale: number; unit: string }): number {
  return toMm(value) * (value.unit === 'in' ? 25.4 : 1)
}
