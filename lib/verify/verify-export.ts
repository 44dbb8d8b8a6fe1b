import * as z from 'zod'
import { isSameBytes } from '@/lib/calc/merkle-tree'
import { type Fact, parseFact } from '@/lib/domain/facts/fact-kinds'
import { parseCheckpoint, type SignedCheckpoint, shortDigest, verifyCheckpoint } from '@/lib/evidence/checkpoint'
import { hexDigestOf } from '@/lib/evidence/digest'
import { type GrowingTree, growTree } from '@/lib/evidence/growing-tree'
import { hashOfLeaf, parseLeaf } from '@/lib/evidence/leaf'
import { parseOrigin, TenantName } from '@/lib/evidence/origin'
import { parseCanonical } from '@/lib/evidence/parse-canonical'
import { parseVkey } from '@/lib/evidence/vkey'
import type { ByteSource } from './byte-source'
import type { CheckOptions, Found } from './check-options'
import type { Ledger } from './ledger'
import { readLines } from './read-lines'
import { checkLogKeys, keysTaken } from './record/check-keys'
import { judgeWhose } from './whose'

const Head = z.strictObject({
  kind: z.literal('underwrap log'),
  origin: z.string().max(200),
  size: z.int().nonnegative(),
  tenant: TenantName,
  v: z.literal(1),
})
type Head = z.infer<typeof Head>

const STREAMS_AT_MOST = 400_000
const KEYS_AT_MOST = 5000

/** What is kept while the lines go by: the tree's right edge, the length of each stream, the keys, the root at the size that the reader asks about. */
type Run = {
  tree: GrowingTree
  lengths: Map<string, number>
  keyFacts: Fact[]
  rootAsked: Uint8Array | null
  asked: number
}

/**
 * Check a log export line by line, computing the tree's root as it reads. Memory grows with the height of the tree and the number of streams, not with the facts.
 * @throws CheckEnded when nothing more can be made out @source lib/evidence/FORMAT.md section 6
 */
export async function verifyExport(
  source: ByteSource,
  ledger: Ledger,
  found: Found,
  { trusted, onProgress }: CheckOptions,
): Promise<void> {
  const lines = readLines(source, onProgress)
  const head = headOf((await lines.next()).value ?? null, ledger)
  const run: Run = {
    tree: growTree(),
    lengths: new Map(),
    keyFacts: [],
    rootAsked: null,
    asked: trusted.checkpoint?.size ?? 0,
  }
  let leafBytes: Uint8Array | null = null
  let last: Uint8Array | null = null
  for await (const line of lines) {
    if (line === null) ledger.fatal('text-malformed', `after fact ${run.tree.size}`)
    else if (last !== null) ledger.fatal('line-after-end', `after fact ${run.tree.size}`)
    else if (run.tree.size === head.size && leafBytes === null) last = line
    else if (leafBytes === null) leafBytes = line
    else {
      takeFact(leafBytes, line, head, run, ledger)
      leafBytes = null
    }
  }
  const checkpoint = endOf(last, head, run, ledger)
  const keys = keysTaken(run.keyFacts)
  const vkeyText = keys.log.at(-1)?.vkey ?? ''
  checkLogKeys(keys, vkeyText, ledger)
  const vkey = parseVkey(vkeyText)
  if (!vkey.ok || !verifyCheckpoint(checkpoint, vkey.value)) ledger.broken('checkpoint-signature', 'last line')
  ledger.prove(
    'log',
    `The export is whole: ${head.size} facts in ${run.lengths.size} streams, without a gap, and their tree has the head ${shortDigest(checkpoint.root)} that the checkpoint is signed for.`,
    0,
  )
  ledger.leaveOpen(
    'true',
    'That what was observed and keyed in was true: the log shows who said it, when, and that it stands as it was said.',
  )
  const certificate = keys.certificates.at(-1) ?? null
  found.about = {
    kind: 'log export',
    organisation: null,
    isDemo: parseOrigin(head.origin)?.isDemo ?? false,
    repair: null,
    revision: null,
    purpose: null,
    asOf: null,
    factCount: run.tree.size,
    photoCount: 0,
    origin: checkpoint.origin,
    logSize: checkpoint.size,
    shortDigest: shortDigest(checkpoint.root),
    vkey: vkeyText,
    certificate: certificate && {
      sha256: certificate.certificateSha256,
      subject: certificate.subject,
      isSelfSigned: certificate.madeHere,
    },
    stampedAt: null,
  }
  const rootAt = (size: number) => (size === run.asked ? run.rootAsked : null)
  const signer = { keys, checkpoint, certificateSha256: certificate?.certificateSha256 ?? null, rootAt }
  found.signer = judgeWhose(trusted, signer, ledger)
  if (trusted.checkpoint && run.rootAsked && found.signer === 'known')
    ledger.prove('consistency', `The log still holds all ${run.asked} facts that it held at your checkpoint.`, 0)
}

function headOf(line: Uint8Array | null, ledger: Ledger): Head {
  const value = line && parseCanonical(line)
  const head = Head.safeParse(value?.ok ? value.value : null)
  if (!head.success) return ledger.unreadable('not-a-record', 'line 1')
  if (parseOrigin(head.data.origin)?.tenant !== head.data.tenant) ledger.broken('checkpoint-holder', 'line 1')
  return head.data
}

function takeFact(leafBytes: Uint8Array, factBytes: Uint8Array, head: Head, run: Run, ledger: Ledger): void {
  const { tree, lengths } = run
  const index = tree.size
  tree.add(hashOfLeaf(leafBytes))
  if (tree.size === run.asked) run.rootAsked = tree.root()
  const leaf = parseLeaf(leafBytes)
  if (!leaf.ok) {
    ledger.broken('leaf-malformed', `leaf ${index}`)
    return
  }
  const { stream, position, sha256, tenant } = leaf.value
  const place = `leaf ${index}: ${stream}, position ${position}`
  if (tenant !== head.tenant) ledger.broken('leaf-holder', place)
  if (hexDigestOf(factBytes) !== sha256) ledger.broken('fact-digest', place)
  const expected = (lengths.get(stream) ?? 0) + 1
  if (position !== expected) ledger.broken('position-gap', place)
  lengths.set(stream, Math.max(expected, position))
  if (lengths.size > STREAMS_AT_MOST) ledger.fatal('too-large', place)
  const value = parseCanonical(factBytes)
  if (!value.ok) {
    ledger.broken('fact-not-canonical', place)
    return
  }
  const stated =
    value.value !== null && typeof value.value === 'object' && 'stream' in value.value ? value.value.stream : null
  if (stated !== stream) ledger.broken('fact-stream', place)
  if (!stream.startsWith('key:')) return
  const fact = parseFact(value.value)
  if (!fact.ok) {
    ledger.broken('fact-malformed', place)
    return
  }
  if (run.keyFacts.length === KEYS_AT_MOST) ledger.fatal('too-many-facts', place)
  run.keyFacts.push(fact.value)
}

function endOf(line: Uint8Array | null, head: Head, { tree }: Run, ledger: Ledger): SignedCheckpoint {
  if (tree.size !== head.size || line === null)
    return ledger.fatal('checkpoint-size', `${tree.size} facts of ${head.size}`)
  const value = parseCanonical(line)
  const checkpoint = value.ok && typeof value.value === 'string' ? parseCheckpoint(value.value) : null
  if (!checkpoint?.ok) return ledger.fatal('checkpoint-malformed', 'last line')
  const { origin, size, root } = checkpoint.value
  if (origin !== head.origin) ledger.broken('checkpoint-holder', 'last line')
  if (size !== head.size) ledger.broken('checkpoint-size', 'last line')
  if (tree.size === 0 || !isSameBytes(root, tree.root())) ledger.broken('root-differs', 'last line')
  return checkpoint.value
}
