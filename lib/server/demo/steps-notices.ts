import { COMPLETIONS, LATER_NOTICES } from './completions'
import { K, QI } from './demo-people'
import { at, secondsAfter } from './demo-time'
import type { OnRepair } from './steps-before'

/** Notice of the first day's witness points, each for the time at which the point is given: sent together, some seconds apart. */
export function stepNotices({ hand, figures, number }: OnRepair, points: [point: string, clock: string][]): void {
  const { day, clock } = COMPLETIONS[number].notices
  points.forEach(([point, due], step) => {
    hand.notice(point, secondsAfter(at(day, clock), step * 10), QI, K, at(figures.day, due))
  })
}

/** Later notices that were sent up to a moment's day; `sent` picks by the day of sending so that facts stay in order of receipt. */
export function laterNotices({ hand, number }: OnRepair, sentOn: string, sentClock?: string): void {
  const due = LATER_NOTICES[number].filter(
    ([, day, clock]) => day === sentOn && (sentClock === undefined || clock === sentClock),
  )
  due.forEach(([point, day, clock, forDay, forClock], step) => {
    hand.notice(point, secondsAfter(at(day, clock), step * 10), QI, K, at(forDay, forClock))
  })
}
