import type { Argument } from '@/lib/calc/argument'
import { isRefused, type Refusal } from '@/lib/calc/refusal'

type Arguments = Readonly<Record<string, Argument<unknown, unknown>>>
type GivenOf<A> = A extends Argument<infer Given, unknown> ? Given : never
type ReadOf<A> = A extends Argument<unknown, infer Read> ? Read : never
type MayBeLeftOut<S extends Arguments> = { [K in keyof S]: undefined extends GivenOf<S[K]> ? K : never }[keyof S]

/** What a caller passes: null says "not known". Only arguments that are optional or have a default may be left out. */
export type GivenArguments<S extends Arguments> = {
  readonly [K in Exclude<keyof S, MayBeLeftOut<S>>]: GivenOf<S[K]>
} & {
  readonly [K in MayBeLeftOut<S>]?: GivenOf<S[K]>
}

/** What the body of a formula receives: every argument read and inside its range. */
export type ReadArguments<S extends Arguments> = { readonly [K in keyof S]: ReadOf<S[K]> }

/** A function of named arguments that answers an object or a refusal, and that also takes the reference names. */
export interface Formula<S extends Arguments, Answer> {
  (given: GivenArguments<S>): Answer | Refusal
  /** Same computation for arguments of unknown type under the names that the refusal codes use. */
  readonly byReferenceName: (raw: Readonly<Record<string, unknown>>) => Answer | Refusal
}

/**
 * Make a formula from its arguments and its body. Arguments are read in the order written; the first refusal is the answer,
 * so the body never sees a missing, non-finite or out-of-sign value.
 */
export function formula<S extends Arguments, Answer>(
  spec: S,
  body: (read: ReadArguments<S>) => Answer | Refusal,
): Formula<S, Answer> {
  const names: ReadonlyArray<keyof S & string> = Object.keys(spec)
  const computeFrom = (rawOf: (name: string, code: string) => unknown): Answer | Refusal => {
    const read: { [K in keyof S]?: unknown } = {}
    for (const name of names) {
      const argument: Argument<unknown, unknown> = spec[name] as S[typeof name]
      const value = argument.read(rawOf(name, argument.code))
      if (isRefused(value)) return value
      read[name] = value
    }
    return body(read as ReadArguments<S>)
  }
  return Object.assign(
    (given: GivenArguments<S>) => {
      const values: Readonly<Record<string, unknown>> = given
      return computeFrom((name) => values[name])
    },
    { byReferenceName: (raw: Readonly<Record<string, unknown>>) => computeFrom((_name, code) => raw[code]) },
  )
}
