import type { BodyOf, Fact } from '@/lib/domain/facts/fact-kinds'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { followKeys } from '@/lib/evidence/follow-keys'
import type { Ledger } from '../ledger'

/** The log keys and signing certificates that the record names, in the order in which they were taken. */
export type KeysTaken = { log: BodyOf<'log-key-taken'>[]; certificates: BodyOf<'signing-certificate-taken'>[] }

/** The bodies of both key streams. @param facts in the order of the log */
export function keysTaken(facts: readonly Fact[]): KeysTaken {
  return {
    log: ofKind(facts, 'log-key-taken')
      .filter((fact) => fact.stream === 'key:log')
      .map((fact) => fact.body),
    certificates: ofKind(facts, 'signing-certificate-taken')
      .filter((fact) => fact.stream === 'key:signature')
      .map((fact) => fact.body),
  }
}

/**
 * Check the chain of log keys, and that the checkpoint's key is the last of them.
 * Breaks: `key-missing`, `key-chain`, `key-not-last`. @source lib/evidence/FORMAT.md section 4
 */
export function checkLogKeys({ log }: KeysTaken, vkey: string, ledger: Ledger): void {
  const [first] = log
  if (!first) {
    ledger.broken('key-missing', 'key:log')
    return
  }
  const { brokenAt } = followKeys(log, first.vkey)
  if (brokenAt !== null) ledger.broken('key-chain', `key:log, fact ${brokenAt}`)
  if (log.at(-1)?.vkey !== vkey) ledger.broken('key-not-last', 'checkpoint')
}
