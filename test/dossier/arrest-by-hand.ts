import { measured } from '@/lib/domain/reading'
import { attempt, pid, point, record } from './facts-by-hand'

const moment = (text: string): string => `2026-${text.replace(' ', 'T')}:00+01:00`

/** Points 08 and 09: a tapered plug and its watch. */
export function arrestPoints() {
  return [
    point('08', 'Temporary leak arrest', [
      attempt(
        '08',
        1,
        'released',
        [
          record('08', 1, '05-19 09:10', 'l1', {
            type: 'arrest',
            arrest: { method: 'tapered plug', placedAt: moment('05-19 09:10') },
            pressureThen: measured('0.40', 'MPa'),
            leftInside: 'yes',
            placedBy: pid('t1'),
          }),
        ],
        [],
      ),
    ]),
    point('09', 'Leak arrest confirmed', [
      attempt(
        '09',
        1,
        'released',
        [
          record('09', 1, '05-19 09:16', 'qi', {
            type: 'arrest-watch',
            startedAt: moment('05-19 09:16'),
            endedAt: moment('05-19 09:38'),
            pressure: measured('0.40', 'MPa'),
            wipeDry: 'yes',
            watchedBy: pid('qi'),
          }),
        ],
        [],
      ),
    ]),
  ]
}
