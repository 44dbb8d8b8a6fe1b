import { isAbove } from '@/lib/calc/comparison'
import { isRefused, type Refusal, refuse } from '@/lib/calc/refusal'

/**
 * One named argument of a formula: the name its refusals carry, and how a value of unknown type is read.
 * `Given` is what a caller may pass; null always means "not known" and is refused unless the argument is optional.
 */
export interface Argument<Given, Read> {
  readonly code: string
  readonly read: (value: unknown) => Read | Refusal
  /** Type only: never present at run time. */
  readonly given?: Given
}

export type NumberArgument = Argument<number | null, number>

function argument<Given, Read>(code: string, read: (value: unknown) => Read | Refusal): Argument<Given, Read> {
  return { code, read }
}

function isMissing(value: unknown): value is null | undefined {
  return value === null || value === undefined
}

/** Any finite number. Refuses `missing_`, `not_a_number_` or `not_finite_` followed by `code`. */
export function number(code: string): NumberArgument {
  return argument(code, (value) => {
    if (isMissing(value)) return refuse(`missing_${code}`)
    if (typeof value !== 'number') return refuse(`not_a_number_${code}`)
    return Number.isFinite(value) ? value : refuse(`not_finite_${code}`)
  })
}

function narrowed(base: NumberArgument, problem: (value: number) => string | null): NumberArgument {
  return argument(base.code, (raw) => {
    const value = base.read(raw)
    if (isRefused(value)) return value
    const found = problem(value)
    return found === null ? value : refuse(found)
  })
}

/** A number above zero. Refuses `not_positive_` followed by `code`. */
export function positive(code: string): NumberArgument {
  return narrowed(number(code), (value) => (value > 0 ? null : `not_positive_${code}`))
}

/** A number at or above zero. Refuses `negative_` followed by `code`. */
export function notNegative(code: string): NumberArgument {
  return narrowed(number(code), (value) => (value >= 0 ? null : `negative_${code}`))
}

/** A whole number from `least` on. Refuses `CODE_not_whole`, and `negative_CODE` or `not_positive_CODE` below zero or one. */
export function whole(code: string, least: 0 | 1 | null = null): NumberArgument {
  return narrowed(number(code), (value) => {
    if (least === 0 && value < 0) return `negative_${code}`
    if (least === 1 && value <= 0) return `not_positive_${code}`
    return Number.isSafeInteger(value) ? null : `${code}_not_whole`
  })
}

/** A number above zero and at most one. Refuses `not_positive_CODE` and `CODE_above_one`. */
export function factorUpToOne(code: string): NumberArgument {
  return narrowed(positive(code), (value) => (isAbove(value, 1) ? `${code}_above_one` : null))
}

/** A strain as a fraction. Refuses `strain_not_a_fraction` above 0.02: a percentage was typed. */
export function strain(code: string): NumberArgument {
  return narrowed(positive(code), (value) => (isAbove(value, 0.02) ? 'strain_not_a_fraction' : null))
}

/** Poisson's ratio, or the product of two of them: at least 0 and below 1. Refuses `negative_CODE`, `CODE_not_below_one`. */
export function poisson(code: string): NumberArgument {
  return narrowed(notNegative(code), (value) => (value < 1 ? null : `${code}_not_below_one`))
}

/** True or false, said outright. Refuses `missing_` and `not_a_boolean_` followed by `code`. */
export function flag(code: string): Argument<boolean | null, boolean> {
  return argument(code, (value) => {
    if (isMissing(value)) return refuse(`missing_${code}`)
    return typeof value === 'boolean' ? value : refuse(`not_a_boolean_${code}`)
  })
}

/** Text, which may be empty. Refuses `missing_` and `not_text_` followed by `code`. */
export function text(code: string): Argument<string | null, string> {
  return argument(code, (value) => {
    if (isMissing(value)) return refuse(`missing_${code}`)
    return typeof value === 'string' ? value : refuse(`not_text_${code}`)
  })
}

/** One word of a closed set. Refuses `missing_` and `unknown_` followed by `code`. */
export function oneOf<const Word extends string>(code: string, words: readonly Word[]): Argument<Word | null, Word> {
  return argument(code, (value) => {
    if (isMissing(value)) return refuse(`missing_${code}`)
    return words.find((word) => word === value) ?? refuse(`unknown_${code}`)
  })
}

/** A list whose every entry passes `entry`; the entry's refusals keep their own code. Refuses `missing_`, `not_a_list_`. */
export function list<Given, Read>(
  code: string,
  entry: Argument<Given, Read>,
): Argument<readonly Given[] | null, Read[]> {
  return argument(code, (value) => {
    if (isMissing(value)) return refuse(`missing_${code}`)
    if (!Array.isArray(value)) return refuse(`not_a_list_${code}`)
    const read: Read[] = []
    for (const raw of value) {
      const one = entry.read(raw)
      if (isRefused(one)) return one
      read.push(one)
    }
    return read
  })
}

/** A pair such as a row of a maker's table. Refuses `not_a_pair_` followed by `code`, and what its two members refuse. */
export function pair<A, ReadA, B, ReadB>(
  code: string,
  first: Argument<A, ReadA>,
  second: Argument<B, ReadB>,
): Argument<readonly [A, B], readonly [ReadA, ReadB]> {
  return argument(code, (value) => {
    if (isMissing(value)) return refuse(`missing_${code}`)
    if (!Array.isArray(value) || value.length !== 2) return refuse(`not_a_pair_${code}`)
    const a = first.read(value[0])
    if (isRefused(a)) return a
    const b = second.read(value[1])
    return isRefused(b) ? b : ([a, b] as const)
  })
}

/** An argument that may be left out: missing reads as null, which no formula takes for zero. */
export function optional<Given, Read>(base: Argument<Given, Read>): Argument<Given | null | undefined, Read | null> {
  return argument(base.code, (value) => (isMissing(value) ? null : base.read(value)))
}

/** An argument with a stated default. Left out it takes the default; null is a value that is not known and is refused. */
export function defaulted<Given, Read>(base: Argument<Given, Read>, usual: Read): Argument<Given | undefined, Read> {
  return argument(base.code, (value) => (value === undefined ? usual : base.read(value)))
}

/** As `base`, with every "missing" answered by `code` instead: for formulas whose refusal names the trade fact. */
export function missingAs<Given, Read>(code: string, base: Argument<Given, Read>): Argument<Given | undefined, Read> {
  return argument(base.code, (value) => (isMissing(value) ? refuse(code) : base.read(value)))
}
