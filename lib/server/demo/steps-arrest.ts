import { COMPLETIONS } from './completions'
import { K, L1, QI, T1 } from './demo-people'
import { mpa } from './demo-readings'
import { at, secondsAfter } from './demo-time'
import type { OnRepair } from './steps-before'

/** Point 08, a plug driven in: the time given is when it was placed. */
export function stepPlug({ hand, figures, number }: OnRepair, placed: string, pressure: string): void {
  const { plug, closed } = COMPLETIONS[number]
  const placedAt = at(figures.day, placed)
  hand.photo('08', secondsAfter(placedAt, -150), T1, 'before-arrest', 'Leak before, wet', {
    kind: 'pipe',
    shows: 'wet',
    clock: figures.clock,
    note: 'before',
  })
  hand.record('08', placedAt, T1, {
    type: 'arrest',
    arrest: { method: 'tapered plug', dimensions: plug, placedAt },
    pressureThen: mpa(pressure),
    leftInside: 'yes',
    placedBy: T1,
  })
  hand.photo('08', secondsAfter(placedAt, 70), T1, 'after-arrest', 'Plug cut flush, dry', {
    kind: 'pipe',
    shows: 'dry',
    clock: figures.clock,
    note: 'after',
  })
  hand.close('08', at(figures.day, closed.arrest), {
    signs: [
      [T1, 'performed'],
      [L1, 'checked'],
    ],
    submittedBy: T1,
    releases: [['crew', L1]],
  })
}

/** Point 09: the timed watch; gives the releases. */
export function stepWatch({ hand, figures, number }: OnRepair, from: string, to: string, pressure: string, by = QI) {
  const ended = at(figures.day, to)
  hand.record('09', ended, by, {
    type: 'arrest-watch',
    startedAt: at(figures.day, from),
    endedAt: ended,
    pressure: mpa(pressure),
    wipeDry: 'yes',
    freeOfFlashRust: 'yes',
    gauge: 'instrument:PG-21',
    watchedBy: by,
  })
  hand.photo('09', secondsAfter(ended, 30), by, 'dry-wipe', `White wipe dry at ${to}`, {
    kind: 'wipe',
    clock: to,
    note: `${from} to ${to}`,
  })
  return hand.close('09', at(figures.day, COMPLETIONS[number].closed.watch), {
    signs: [
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
