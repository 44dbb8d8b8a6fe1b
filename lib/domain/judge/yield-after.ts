import { showClock } from '../time'
import type { YieldTable } from './yield-builder'

/** Points 16 to 22: hardness, thickness, looks, test, checklist, handover, service, removal. */
export const AFTER_YIELDS: YieldTable<
  'hardness' | 'thickness' | 'visual' | 'pressure-test' | 'checklist' | 'handover' | 'in-service' | 'removal'
> = {
  hardness(record, into) {
    into.readings('hardness', record.readings, { instrument: record.instrument, at: record.takenAt })
    into.reading('hardness-temp', 'pipe', record.temp, { at: record.takenAt })
    into.event('hardness-taken', record.takenAt)
    into.instrument(record.instrument, 'hardness', record.takenAt)
  },
  thickness(record, into) {
    into.readings('laminate-thickness', record.readings, { instrument: record.instrument, at: record.takenAt })
    into.event('thickness-taken', record.takenAt)
    into.instrument(record.instrument, 'thickness', record.takenAt)
  },
  visual(record, into) {
    const source = { at: record.seenAt }
    for (const one of record.findings ?? []) into.reading('finding-size', one.place ?? one.kind, one.size, source)
    into.reading('total-length', 'wrap', record.totalLength, source)
    into.reading('taper', 'left', record.taperLeft, source)
    into.reading('taper', 'right', record.taperRight, source)
    into.reading('wrap-offset', 'wrap', record.offset, source)
    into.event('visual-seen', record.seenAt)
    into.flag('tap-tested', record.tapTested)
    into.flag('no-findings', record.noFindings)
  },
  'pressure-test'(record, into) {
    const [gauge, second] = record.gauges ?? []
    const times = (record.readings ?? []).flatMap((one) => (one.at ? [one.at] : []))
    for (const one of record.readings ?? []) {
      const mark = one.at ? showClock(one.at) : 'reading'
      into.reading('test-pressure', mark, one.pressure, { instrument: gauge, at: one.at })
      into.reading('test-pressure', `${mark} second gauge`, one.secondPressure, { instrument: second, at: one.at })
      into.reading('test-steel-temp', mark, one.steel, { instrument: record.thermometer, at: one.at })
    }
    into.event('test-start', times[0])
    if (times.length > 1) into.event('test-end', times.at(-1))
    into.flag('no-leak', record.noLeak)
    for (const one of record.gauges ?? []) into.instrument(one, 'pressure', times[0])
    into.instrument(record.thermometer, 'steel', times[0])
  },
  checklist(record, into) {
    into.flag('label-fixed', record.labelFixed)
    into.reading('life-years', 'checklist', record.lifeYears)
  },
  handover(record, into) {
    into.flag('label-fixed', record.labelFixed)
    into.flag('label-readable', record.labelReadable)
    into.event('handed-over', record.handedAt)
  },
  'in-service'(record, into) {
    const source = { instrument: record.instrument }
    into.readings('wall-beyond-ends', record.wallBeyondEnds, source)
    into.reading('in-service-pressure', 'line', record.pressure)
    into.reading('in-service-temp', 'line', record.temp)
    into.flag('weep', record.weep)
    into.flag('colour-change', record.colourChange)
    into.flag('impact', record.impact)
    into.instrument(record.instrument, 'wall')
    into.person(record.inspector, 'in-service inspector')
  },
  removal(record, into) {
    into.readings('removal-wall', record.wall, { instrument: record.instrument })
    into.flag('pipe-touched', record.pipeTouched)
    into.flag('pried-in-halves', record.priedInHalves)
    into.instrument(record.instrument, 'wall')
  },
}
