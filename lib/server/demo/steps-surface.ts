import { measured } from '@/lib/domain/reading'
import type { Moment } from '@/lib/domain/time'
import { COMPLETIONS } from './completions'
import { K, L1, QI, T1 } from './demo-people'
import { degC, listReadings, mm } from './demo-readings'
import { at, secondsAfter } from './demo-time'
import type { ClimateFigures } from './repair-figures'
import type { OnRepair } from './steps-before'

/** Point 05. The second photo of the band may be given by another repair's drawing: the same bytes. */
export function stepCleanliness(
  { hand, figures, number }: OnRepair,
  lengthPhotoOf?: { repair: string; takenAt: Moment; note: string },
): void {
  const { prepared, closed } = COMPLETIONS[number]
  const { surface, day } = figures
  const seen = at(day, surface.cleanAt)
  hand.record('05', seen, QI, {
    type: 'cleanliness',
    grade: surface.grade,
    method: surface.method,
    dustClass: measured(surface.dust, 'class'),
    salts: listReadings('S', surface.salts, 'mg/m2'),
    oilFree: 'yes',
    preparedLeft: mm(prepared[0]),
    preparedRight: mm(prepared[1]),
    finishedAt: at(day, surface.prepDone),
    checkedAt: seen,
    instrument: 'instrument:SM-02',
  })
  hand.photo('05', secondsAfter(seen, 60), QI, 'prepared-band', 'Whole prepared band, 6 o’clock in the mirror', {
    kind: 'pipe',
    shows: 'prepared',
    clock: '6',
    note: surface.grade,
  })
  const length = {
    kind: 'pipe',
    shows: 'length',
    clock: figures.clock,
    note: `${prepared[0]} + ${prepared[1]} mm`,
  } as const
  if (lengthPhotoOf) {
    const { repair, takenAt, note } = lengthPhotoOf
    hand.photo(
      '05',
      secondsAfter(seen, 90),
      QI,
      'prepared-length',
      'Tape along the prepared length',
      { ...length, note },
      {},
      { key: `${repair}/05/1/2`, repair, point: '05', takenAt },
    )
  } else hand.photo('05', secondsAfter(seen, 90), QI, 'prepared-length', 'Tape along the prepared length', length)
  hand.close('05', at(day, closed.clean), {
    signs: [
      [T1, 'performed'],
      [L1, 'checked'],
      [QI, 'measured'],
      [K, 'witnessed'],
    ],
    submittedBy: QI,
    releases: [
      ['crew', L1],
      ['inspector', QI],
    ],
  })
}

/** Point 06. */
export function stepProfile({ hand, figures, number }: OnRepair): void {
  const seen = at(figures.day, figures.surface.profileAt)
  hand.record('06', seen, QI, {
    type: 'profile',
    method: 'stylus',
    readings: listReadings('P', figures.surface.profile, 'um'),
    instrument: 'instrument:SP-07',
    takenAt: seen,
  })
  const first = figures.surface.profile.split(' ')[0] ?? ''
  hand.photo('06', secondsAfter(seen, 60), QI, 'profile-gauge', `Gauge at P1: ${first} µm`, {
    kind: 'digital',
    title: 'SP-07',
    lines: [first, 'um'],
    note: 'P1',
  })
  hand.close('06', at(figures.day, COMPLETIONS[number].closed.profile), {
    signs: [[QI, 'measured']],
    submittedBy: QI,
    releases: [
      ['crew', L1],
      ['inspector', QI],
    ],
  })
}

/** One climate reading at point 07 or 13, with a photo of the instrument's face where asked. */
export function recordClimate(
  { hand, figures }: OnRepair,
  point: '07' | '13',
  climate: ClimateFigures,
  hygrometer: string,
  extra: { change?: string; photo?: boolean } = {},
) {
  const seen = at(figures.day, climate.at)
  const fact = hand.record(point, seen, L1, {
    type: 'climate',
    takenAt: seen,
    air: degC(climate.air),
    humidity: measured(climate.humidity, '%'),
    steel: climate.steel.map(([clock, temp]) => ({ clock, reading: degC(temp) })),
    instrument: `instrument:${hygrometer}`,
    steelInstrument: 'instrument:ST-04',
    ...(extra.change ? { change: extra.change } : {}),
  })
  if (extra.photo) {
    hand.photo(
      '07',
      secondsAfter(seen, 40),
      L1,
      'climate-face',
      `${hygrometer}: ${climate.air} °C, ${climate.humidity} %`,
      {
        kind: 'digital',
        title: hygrometer,
        lines: [`${climate.air} C`, `${climate.humidity} %RH`],
        note: figures.datum,
      },
    )
  }
  return fact
}

/** Sign and release point 07 after a reading: after its first at the time of the completions, after a later one at its own. */
export function closeClimate({ hand, figures, number }: OnRepair, clock = COMPLETIONS[number].closed.climate): void {
  hand.close('07', at(figures.day, clock), {
    signs: [
      [L1, 'measured'],
      [QI, 'reviewed'],
    ],
    submittedBy: L1,
    releases: [['crew', L1]],
  })
}
