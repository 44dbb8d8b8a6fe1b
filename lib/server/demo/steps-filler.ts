import { parseReading } from '@/lib/domain/reading'
import { COMPLETIONS } from './completions'
import { K, L1, QI, T1 } from './demo-people'
import { degC, fillerReadings, grams, listReadings, mm } from './demo-readings'
import { at, secondsAfter } from './demo-time'
import type { OnRepair } from './steps-before'
import { recordClimate } from './steps-surface'

/** Point 10: the filler's mix, one kit weighed. */
export function stepFillerMix({ hand, figures, number }: OnRepair) {
  const { filler, closed } = COMPLETIONS[number]
  const { batch, partA, partB, mixedAt } = figures.filler
  const started = at(figures.day, mixedAt)
  const ended = at(figures.day, filler.mixEnded)
  hand.record(
    '10',
    started,
    T1,
    {
      type: 'filler-mix',
      mixNo: 'F1',
      mixedBy: T1,
      checkedBy: L1,
      partA: [{ batch: `batch:${batch}`, amount: grams(partA) }],
      partB: [{ batch: `batch:${batch}`, amount: grams(partB) }],
      proportion: 'by mass',
      startedAt: started,
      endedAt: ended,
      resinTemp: degC(filler.temp),
      colourUniform: 'yes',
      scale: 'instrument:WB-09',
    },
    { enteredAt: ended },
  )
  hand.photo('10', secondsAfter(ended, 20), T1, 'scale-and-labels', `${partA} g and ${partB} g of ${batch}`, {
    kind: 'scale',
    readings: [`${partA} g`, `${partB} g`],
    labels: [`${batch} A`, `${batch} B`],
  })
  return hand.close('10', at(figures.day, closed.mix), {
    signs: [
      [T1, 'performed'],
      [L1, 'checked'],
    ],
    submittedBy: T1,
    releases: [['crew', L1]],
  })
}

/** Point 11, first part: placed, and released up to the cure, because the thickness can be read only when it is hard. */
export function stepFillerPlaced({ hand, figures, number }: OnRepair) {
  const placed = at(figures.day, figures.filler.placedAt)
  hand.record('11', placed, T1, {
    type: 'remark',
    text: 'Filler placed and drawn smooth; its thickness is read at the marks when it is hard.',
  })
  hand.sign('11', secondsAfter(placed, 30), T1, 'performed')
  const step = { kind: 'up-to-step', step: 'cure and hardness of the filler', untilPoint: '13' } as const
  const closing = at(figures.day, COMPLETIONS[number].closed.placed)
  return [
    hand.release('11', closing, 'crew', L1, step),
    hand.release('11', secondsAfter(closing, 10), 'inspector', QI, step),
  ]
}

/** Point 11, second part: heights before and after at the same marks. */
export function recordFillerThickness({ hand, figures, number }: OnRepair): void {
  const { filler } = COMPLETIONS[number]
  const { clocks, thickness, placedAt } = figures.filler
  const seen = at(figures.day, filler.measuredAt)
  hand.record('11', seen, QI, {
    type: 'filler-thickness',
    mixNo: 'F1',
    placedAt: at(figures.day, placedAt),
    placedBy: T1,
    holeMark: `0@${clocks[1]}`,
    before: fillerReadings(clocks, filler.before, 'mm'),
    after: fillerReadings(clocks, heightsAfter(filler.before, thickness), 'mm'),
    measuredAt: seen,
    smooth: 'yes',
    coveredLength: mm(filler.covered[0]),
    coveredGirth: mm(filler.covered[1]),
    instrument: 'instrument:LG-06',
  })
  hand.photo('11', secondsAfter(seen, 40), QI, 'marks-under-gauge', `Gauge at the hole, mark 0@${clocks[1]}`, {
    kind: 'pipe',
    shows: 'marks',
    clock: clocks[1],
    note: thickness.split(' / ')[1] ?? '',
  })
}

/** Height after = height before + thickness at each mark, in exact tenths; a mark not measured stays so. */
function heightsAfter(before: string, thickness: string): string {
  const tenths = (text: string) => {
    const reading = parseReading(text, 'mm')
    return reading?.kind === 'number' ? reading.digits : null
  }
  const rows = before.split(' / ').map((row) => row.split(' '))
  return thickness
    .split(' / ')
    .map((row, step) =>
      row
        .split(' ')
        .map((text, place) => {
          const sum = [tenths(text), tenths(rows[step]?.[place] ?? '')]
          const [a, b] = sum
          if (a === null || a === undefined || b === null || b === undefined) return '-'
          return ((a + b) / 10).toFixed(1)
        })
        .join(' '),
    )
    .join(' / ')
}

/** Points 11 and 12 to their releases: hardness at its time, thickness at its own. */
export function stepFillerCured(on: OnRepair, hardness: string): void {
  const { hand, figures, number } = on
  const { filler, closed } = COMPLETIONS[number]
  const seen = at(figures.day, filler.hardAt)
  hand.record('12', seen, QI, {
    type: 'filler-cure',
    takenAt: seen,
    temp: degC(filler.temp),
    readings: listReadings('F', hardness, 'ShoreD'),
    noWeep: 'yes',
    instrument: 'instrument:HD-05',
  })
  const first = hardness.split(' ')[0] ?? ''
  hand.photo('12', secondsAfter(seen, 30), QI, 'gauge-on-filler', `HD-05 on the filler: ${first} Shore D`, {
    kind: 'dial',
    title: 'HD-05',
    value: Number(first),
    from: 0,
    to: 100,
    unit: 'Shore D',
    note: 'F1',
  })
  recordFillerThickness(on)
  hand.close('11', at(figures.day, closed.thickness), {
    signs: [[QI, 'measured']],
    submittedBy: QI,
    releases: [
      ['crew', L1],
      ['inspector', QI],
    ],
  })
  hand.close('12', at(figures.day, closed.cure), {
    signs: [[QI, 'measured']],
    submittedBy: QI,
    releases: [
      ['crew', L1],
      ['inspector', QI],
    ],
  })
}

/** Point 13: re-swept, climate again. */
export function stepPreWrap(on: OnRepair, checked: string, hygrometer: string): void {
  const { hand, figures, number } = on
  const { recheck, closed } = COMPLETIONS[number]
  const seen = at(figures.day, checked)
  recordClimate(on, '13', { at: checked, ...recheck }, hygrometer)
  hand.record('13', secondsAfter(seen, 15), L1, {
    type: 'pre-wrap',
    checkedAt: seen,
    resweptAndWiped: 'yes',
    dry: 'yes',
    stationsMarked: 'yes',
    freeOfFlashRust: 'yes',
  })
  hand.photo('13', secondsAfter(seen, 30), L1, 'marked-band', 'Band re-swept, start and finish marked', {
    kind: 'pipe',
    shows: 'band',
    clock: figures.clock,
    note: figures.stations,
  })
  hand.close('13', at(figures.day, closed.preWrap), {
    signs: [
      [L1, 'checked'],
      [QI, 'checked'],
      [K, 'witnessed'],
    ],
    submittedBy: L1,
    releases: [
      ['crew', L1],
      ['inspector', QI],
    ],
  })
}
