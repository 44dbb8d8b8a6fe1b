import { type StreamId, streamOf } from '../facts/fact'
import type { Fact, FactOf } from '../facts/fact-kinds'
import { BLOCK_AT_MOST, NUMBER_AT_MOST } from '../facts/register-bodies'
import { done, type Result, refused } from '../result'

/** The one stream in which blocks of repair numbers are allotted: each new block is chosen on all before it. */
export const NUMBERS_STREAM: StreamId = streamOf('register', 'repair-numbers')

/** Numbers that one device alone opens. */
export type NumberBlock = FactOf<'numbers-allotted'>['body']

/** The blocks that the facts of the register allot, in their order. */
export function numberBlocks(facts: readonly Fact[]): NumberBlock[] {
  return facts.flatMap((fact) => (fact.kind === 'numbers-allotted' ? [fact.body] : []))
}

/** A repair number in its parts; null when it does not end with up to six digits behind a prefix. */
export function partsOfNumber(number: string): { prefix: string; index: number; digits: number } | null {
  const [, prefix, digits] = /^(.*\D)(\d{1,6})$/.exec(number) ?? []
  return prefix && digits ? { prefix, index: Number(digits), digits: digits.length } : null
}

/** The number of a block at an index, as it is chalked: `MD-0401`. */
export function numberAt({ prefix, digits }: Pick<NumberBlock, 'prefix' | 'digits'>, index: number): string {
  return `${prefix}${String(index).padStart(digits, '0')}`
}

/** The block in which a number lies, however its zeros and letters are written; null when it lies in none. */
export function blockOf(blocks: readonly NumberBlock[], number: string): NumberBlock | null {
  const parts = partsOfNumber(number)
  if (!parts) return null
  const found = blocks.find(
    (one) => isSamePrefix(one.prefix, parts.prefix) && parts.index >= one.from && parts.index <= one.to,
  )
  return found ?? null
}

/** Numbers that a device may still open: those of its blocks that no known repair bears, in the order of allotment. */
export function numbersLeft(
  blocks: readonly NumberBlock[],
  device: StreamId,
  taken: ReadonlySet<string>,
): { number: string; block: NumberBlock }[] {
  const borne = new Set([...taken].map(spelling))
  return blocks
    .filter((one) => one.device === device)
    .flatMap((block) =>
      Array.from({ length: block.to - block.from + 1 }, (_, at) => ({
        number: numberAt(block, block.from + at),
        block,
      })),
    )
    .filter((one) => !borne.has(spelling(one.number)))
}

/**
 * The next block after a prefix: behind every number that a repair bears and every one that is allotted. @param digits fewest digits of a number; those of the last
 * number with the prefix count before. Refuses `numbers-exhausted` beyond the greatest number
 */
export function nextBlock(
  ask: { prefix: string; digits: number; count: number },
  blocks: readonly NumberBlock[],
  borne: readonly string[],
): Result<Pick<NumberBlock, 'prefix' | 'digits' | 'from' | 'to'>, { code: 'numbers-exhausted'; last: number }> {
  const known = borne
    .map(partsOfNumber)
    .filter((one) => one !== null && isSamePrefix(one.prefix, ask.prefix))
    .flatMap((one) => (one ? [one] : []))
  const own = blocks.filter((one) => isSamePrefix(one.prefix, ask.prefix))
  const last = Math.max(0, ...known.map((one) => one.index), ...own.map((one) => one.to))
  const latest = own.at(-1)
  const written =
    latest ?? known.reduce<(typeof known)[number] | null>((a, b) => (a && a.index > b.index ? a : b), null)
  const to = last + Math.min(ask.count, BLOCK_AT_MOST)
  if (to > NUMBER_AT_MOST) return refused({ code: 'numbers-exhausted', last })
  return done({ prefix: written?.prefix ?? ask.prefix, digits: written?.digits ?? ask.digits, from: last + 1, to })
}

function isSamePrefix(a: string, b: string): boolean {
  return a.toLowerCase() === b.toLowerCase()
}

/** Two spellings that a person on the pipe would take for one number. */
function spelling(number: string): string {
  const parts = partsOfNumber(number)
  return parts ? `${parts.prefix.toLowerCase()}${parts.index}` : number.toLowerCase()
}
