import type { Break, Statement } from './answer'
import { BREAK_TEXTS, type BreakCode } from './break-texts'

/** No more can be made out after this; what was found so far is the answer. */
export class CheckEnded extends Error {}

/** A break of a kind is listed this often; more of the same tell nothing new, and a hostile file could have millions. */
const OF_A_KIND = 20

/** What a check finds, in the order found. With `stopAtFirst` it ends at the first break: the answer is the same, the list of breaks is not. */
export class Ledger {
  readonly proved: Statement[] = []
  readonly notProved: Statement[] = []
  readonly breaks: Break[] = []
  private readonly counts = new Map<BreakCode, number>()
  /** Why the file cannot be read at all; it then has no other answer. */
  isUnreadable = false

  constructor(private readonly stopAtFirst: boolean) {}

  /** Note a break. @throws CheckEnded when the check is to end at the first */
  broken(code: BreakCode, place: string): void {
    const count = (this.counts.get(code) ?? 0) + 1
    this.counts.set(code, count)
    if (count <= OF_A_KIND) this.breaks.push({ code, place, text: BREAK_TEXTS[code] })
    else if (count === OF_A_KIND + 1) this.breaks.push({ code, place: 'and further places', text: BREAK_TEXTS[code] })
    if (this.stopAtFirst) throw new CheckEnded(code)
  }

  /** Note a break after which nothing more can be made out. @throws CheckEnded always */
  fatal(code: BreakCode, place: string): never {
    this.broken(code, place)
    throw new CheckEnded(code)
  }

  /** Say that the file is none that can be read. @throws CheckEnded always */
  unreadable(code: BreakCode, place: string): never {
    this.isUnreadable = true
    this.breaks.push({ code, place, text: BREAK_TEXTS[code] })
    throw new CheckEnded(code)
  }

  /** Note what was proved, where no break was found since there were `breakCount` of them. */
  prove(code: string, text: string, breakCount: number): void {
    if (this.breakCount === breakCount) this.proved.push({ code, text })
  }

  leaveOpen(code: string, text: string): void {
    this.notProved.push({ code, text })
  }

  /** How many breaks there are, counted in full. */
  get breakCount(): number {
    return [...this.counts.values()].reduce((sum, count) => sum + count, 0)
  }
}
