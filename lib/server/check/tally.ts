/** Something of the store that is not as it must be. */
export type Break = { place: string; problem: string; remedy: string }

/** Counts what was checked and tells each break as it is found. */
export type Tally = {
  readonly checkedCount: number
  readonly brokenCount: number
  pass(count?: number): void
  fail(found: Break): void
  /** Something worth a line that is no break. */
  note(text: string): void
}

export const REPROJECT = 'Run npm run underwrap -- reproject.'
export const RESTORE = 'Restore a backup from before it into an empty store; the log tells which fact it was.'

/** Start counting; each break is one line. */
export function startTally(tell: (line: string) => void): Tally {
  let [checked, broken] = [0, 0]
  return {
    get checkedCount() {
      return checked
    },
    get brokenCount() {
      return broken
    },
    pass(count = 1) {
      checked += count
    },
    fail({ place, problem, remedy }) {
      checked += 1
      broken += 1
      tell(`broken: ${place}: ${problem}. ${remedy}`)
    },
    note: (text) => tell(text),
  }
}
