import type { BodyOf } from '@/lib/domain/facts/fact-kinds'
import { verifyEndorsement } from './endorsement'
import { parseVkey, type Vkey } from './vkey'

export type KeyTaken = BodyOf<'log-key-taken'>

/** How far trust in one log key reaches. `brokenAt` counts the facts from 1: a false endorsement, another former key than named, a key that is none. */
export type FollowedKeys = {
  /** Keys that the trusted one vouches for, itself first; empty when it is not in the log. */
  trusted: Vkey[]
  /** Whether the present key is among them. */
  reachesPresent: boolean
  brokenAt: number | null
}

/** Follow the facts `log-key-taken`, in the order of their stream, from a key that somebody trusts. A change without endorsement ends the trust. */
export function followKeys(taken: readonly KeyTaken[], from: string): FollowedKeys {
  const trusted: Vkey[] = []
  let before: Vkey | null = null
  let isTrusted = false
  for (const [index, { vkey: text, replaces, endorsement }] of taken.entries()) {
    const vkey = parseVkey(text)
    const isLinked = (before?.text ?? null) === replaces && (before !== null || endorsement === null)
    if (!vkey.ok || !isLinked) return { trusted, reachesPresent: false, brokenAt: index + 1 }
    if (before !== null && endorsement !== null) {
      if (!verifyEndorsement(before, text, endorsement)) return { trusted, reachesPresent: false, brokenAt: index + 1 }
    } else isTrusted = false
    if (text === from) {
      isTrusted = true
      trusted.length = 0
    }
    if (isTrusted) trusted.push(vkey.value)
    before = vkey.value
  }
  return { trusted, reachesPresent: isTrusted, brokenAt: null }
}
