import * as z from 'zod'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { parseFact } from '@/lib/domain/facts/fact-kinds'
import { hexDigestOf } from '@/lib/evidence/digest'
import { type Leaf, parseLeaf } from '@/lib/evidence/leaf'
import { parseCanonical } from '@/lib/evidence/parse-canonical'
import type { Ledger } from '../ledger'
import type { Attachments } from '../pdf/read-attachments'

/** One fact of a dossier with its leaf and its proof as they stand side by side. `fact` is null where this checker does not know its form. */
export type FactLine = {
  lineNo: number
  fact: Fact | null
  leaf: Leaf
  leafBytes: Uint8Array
  index: number
  proof: string[]
}

const FACTS_AT_MOST = 30_000
const Inclusion = z.strictObject({ index: z.int().nonnegative(), proof: z.array(z.string().max(44)).max(64) })

/**
 * Read facts, leaves and proofs line by line: each canonical, the fact's digest the one in its leaf, its stream the leaf's.
 * @param isStrict whether the forms of the facts are those that the stated rules know: a fact of no form is then a break
 * Breaks: `text-malformed`, `lines-differ`, `too-many-facts`, `fact-*`, `leaf-malformed`, `proof-malformed`.
 */
export function readFacts(attachments: Attachments, isStrict: boolean, ledger: Ledger): FactLine[] {
  const facts = linesOf(attachments['facts.jsonl'], 'facts.jsonl', ledger)
  const leaves = linesOf(attachments['leaves.jsonl'], 'leaves.jsonl', ledger)
  const proofs = linesOf(attachments['inclusion.jsonl'], 'inclusion.jsonl', ledger)
  if (facts.length !== leaves.length || facts.length !== proofs.length)
    ledger.broken('lines-differ', `${facts.length} facts, ${leaves.length} leaves, ${proofs.length} proofs`)
  const lines: FactLine[] = []
  const ids = new Set<string>()
  for (const [index, bytes] of facts.entries()) {
    const lineNo = index + 1
    const leaf = leafOf(leaves[index], lineNo, ledger)
    const inclusion = inclusionOf(proofs[index], lineNo, ledger)
    const fact = factOf(bytes, lineNo, leaf, isStrict, ledger)
    if (!leaf || !inclusion || fact === undefined) continue
    if (fact && ids.has(fact.id)) ledger.broken('fact-twice', `facts.jsonl, line ${lineNo}`)
    if (fact) ids.add(fact.id)
    lines.push({ lineNo, fact, leaf, leafBytes: leaves[index] ?? new Uint8Array(), ...inclusion })
  }
  return lines
}

function linesOf(bytes: Uint8Array | null, name: string, ledger: Ledger): Uint8Array[] {
  if (!bytes) return []
  const lines: Uint8Array[] = []
  for (let at = 0; at < bytes.length; ) {
    const end = bytes.indexOf(0x0a, at)
    if (end < 0) {
      ledger.broken('text-malformed', name)
      break
    }
    if (lines.length === FACTS_AT_MOST) {
      ledger.broken('too-many-facts', name)
      break
    }
    lines.push(bytes.subarray(at, end))
    at = end + 1
  }
  return lines
}

function leafOf(bytes: Uint8Array | undefined, lineNo: number, ledger: Ledger): Leaf | null {
  if (!bytes) return null
  const leaf = parseLeaf(bytes)
  if (leaf.ok) return leaf.value
  ledger.broken('leaf-malformed', `leaves.jsonl, line ${lineNo}`)
  return null
}

function inclusionOf(bytes: Uint8Array | undefined, lineNo: number, ledger: Ledger): z.infer<typeof Inclusion> | null {
  if (!bytes) return null
  const value = parseCanonical(bytes)
  const inclusion = value.ok ? Inclusion.safeParse(value.value) : null
  if (inclusion?.success) return inclusion.data
  ledger.broken('proof-malformed', `inclusion.jsonl, line ${lineNo}`)
  return null
}

/** The fact of a line; null when its form is not known, undefined when it cannot be used. */
function factOf(
  bytes: Uint8Array,
  lineNo: number,
  leaf: Leaf | null,
  isStrict: boolean,
  ledger: Ledger,
): Fact | null | undefined {
  const value = parseCanonical(bytes)
  if (!value.ok) {
    ledger.broken('fact-not-canonical', `facts.jsonl, line ${lineNo}`)
    return undefined
  }
  const fact = parseFact(value.value)
  const named = fact.ok ? `${fact.value.kind} ${fact.value.id}` : 'fact'
  const place = `facts.jsonl, line ${lineNo}: ${named}`
  if (leaf && hexDigestOf(bytes) !== leaf.sha256) ledger.broken('fact-digest', place)
  if (!fact.ok) {
    if (isStrict) ledger.broken('fact-malformed', place)
    return isStrict ? undefined : null
  }
  if (leaf && fact.value.stream !== leaf.stream) ledger.broken('fact-stream', place)
  return fact.value
}
