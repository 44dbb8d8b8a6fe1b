import type { YieldTable } from './yield-builder'

/** Points 01 to 04 and the statements anyone may make: defect, design, permit, materials, instruments, persons. */
export const ASSESSMENT_YIELDS: YieldTable<
  'defect' | 'design' | 'permit' | 'stop' | 'materials' | 'instruments' | 'remark'
> = {
  defect(record, into) {
    const source = { instrument: record.instrument }
    into.reading('hole-axial', 'hole', record.holeAxial)
    into.reading('hole-hoop', 'hole', record.holeHoop)
    into.reading('defect-length', 'defect', record.defectLength)
    into.readings('wall', record.wall, source)
    record.diameters?.forEach((value, index) => {
      into.reading('diameter', `D${index + 1}`, value)
    })
    record.girths?.forEach((value, index) => {
      into.reading('girth', `G${index + 1}`, value)
    })
    into.instrument(record.instrument, 'wall')
  },
  design(record, into) {
    into.reading('life-years', 'design', record.lifeYears)
  },
  permit(record, into) {
    into.event('permit-from', record.validFrom)
    into.event('permit-to', record.validTo)
    into.reading('pressure-at-start', 'start', record.pressureAtStart)
    into.flag('spark-restricted', record.sparkRestricted)
  },
  stop(record, into) {
    if (record.what) into.event(record.what === 'stopped' ? 'work-stopped' : 'work-resumed', into.observedAt)
  },
  materials(record, into) {
    for (const line of record.lines ?? []) {
      into.batch(line.batch, line.decision === 'refused' ? 'refused' : 'taken', undefined, line.role)
      if (line.decision === 'refused') continue
      into.flag('certificate-matches', line.certificateMatches)
      into.flag('system-qualified', line.systemQualified)
    }
  },
  instruments(record, into) {
    for (const line of record.instruments ?? [])
      into.instrument(line.instrument, line.decision === 'refused' ? 'refused' : 'taken')
    for (const line of record.persons ?? [])
      into.person(line.person, line.task ?? 'on the job', undefined, { supervisedBy: line.supervisedBy })
  },
  remark() {},
}
