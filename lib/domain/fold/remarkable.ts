import type { FactId } from '../facts/fact'
import type { Moment } from '../time'

/** What a reader is told without asking, and under what: late entries, corrections, copies, clock faults, photos, and all else, such as conflicts and withdrawn releases. */
export type Remarkable = {
  at: Moment
  fact: FactId
  about: 'late entry' | 'correction' | 'copy from paper' | 'clock' | 'photo' | 'other'
  text: string
}
