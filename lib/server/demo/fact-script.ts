import type { z } from 'zod'
import { PersonId } from '@/lib/domain/facts/fact'
import { type BODIES, type Fact, type FactKind, type FactOf, parseFact } from '@/lib/domain/facts/fact-kinds'
import { instantOf, type Moment } from '@/lib/domain/time'
import { deviceOf } from './demo-devices'
import { secondsAfter } from './demo-time'
import { scriptedFactId } from './fact-ids'

type Bodies = typeof BODIES
/** A fact's body as plain text and numbers, before it is parsed. */
export type BodyInput<K extends FactKind> = {
  [S in keyof Bodies]: K extends keyof Bodies[S]
    ? Bodies[S][K] extends z.ZodType
      ? z.input<Bodies[S][K]>
      : never
    : never
}[keyof Bodies]

/** A fact of the demo with the receipt that its script gives it. */
export type ScriptedFact = { fact: Fact; receivedAt: Moment; receivedBy: PersonId }

/** What the script says of one fact. Entered when observed, by the observer, on the observer's own device unless said otherwise. */
export type Line<K extends FactKind> = {
  stream: string
  kind: K
  at: Moment
  by: string
  body: BodyInput<K>
  enteredAt?: Moment
  enteredBy?: string
  late?: { reason: string; source: 'memory' | 'paper tally' | 'instrument store' | 'other' }
  device?: { id: string; clockOffsetMs: number | null }
  receivedAt?: Moment
}

export type FactScript = {
  write<K extends FactKind>(line: Line<K>): FactOf<K>
  /** Number of facts written so far into a stream: the head that a decision sees. */
  lengthOf(stream: string): number
  written: readonly ScriptedFact[]
}

const RECEIPT_AFTER_SECONDS = 20

/**
 * Start a script of facts, after `startingAt` facts of a stream where it goes on from another script. Each line is parsed as a received fact is; receipts follow entry by some seconds unless a line says when.
 * @throws Error when a line is no fact, or would be received before an earlier line of its stream: the script is wrong then
 */
export function startScript(startingAt: ReadonlyMap<string, number> = new Map()): FactScript {
  const written: ScriptedFact[] = []
  const lengths = new Map<string, number>(startingAt)
  const lastReceipt = new Map<string, Moment>()
  return {
    written,
    lengthOf: (stream) => lengths.get(stream) ?? 0,
    write<K extends FactKind>(line: Line<K>): FactOf<K> {
      const no = lengths.get(line.stream) ?? 0
      const enteredAt = line.enteredAt ?? line.at
      const enteredBy = line.enteredBy ?? line.by
      const parsed = parseFact({
        v: 1,
        id: scriptedFactId(instantOf(line.at), line.stream, no),
        stream: line.stream,
        kind: line.kind,
        observedAt: line.at,
        observedBy: line.by,
        enteredAt,
        enteredBy,
        ...(line.late ? { late: line.late } : {}),
        device: line.device ?? deviceOf(enteredBy),
        body: line.body,
      })
      if (!parsed.ok)
        throw new Error(`${line.stream} ${line.kind} at ${line.at}: ${JSON.stringify(parsed.error.faults)}`)
      const receivedAt = line.receivedAt ?? secondsAfter(enteredAt, RECEIPT_AFTER_SECONDS)
      const before = lastReceipt.get(line.stream)
      if (before && instantOf(receivedAt) < instantOf(before))
        throw new Error(`${line.stream} ${line.kind} at ${line.at} is received before the fact ahead of it (${before})`)
      lengths.set(line.stream, no + 1)
      lastReceipt.set(line.stream, receivedAt)
      written.push({ fact: parsed.value, receivedAt, receivedBy: PersonId.parse(enteredBy) })
      return parsed.value as FactOf<K>
    },
  }
}

/** The script's facts in the order of their receipts; facts of one stream keep their order. */
export function inOrderOfReceipt(written: readonly ScriptedFact[]): ScriptedFact[] {
  return written
    .map((one, index) => ({ one, index }))
    .sort((a, b) => instantOf(a.one.receivedAt) - instantOf(b.one.receivedAt) || a.index - b.index)
    .map(({ one }) => one)
}
