import { and, asc, count, eq, gte, inArray, lt, max } from 'drizzle-orm'
import { schema } from '@/db/client'
import { isSameBytes } from '@/lib/calc/merkle-tree'
import { base64Of } from '@/lib/evidence/base64'
import { growTree } from '@/lib/evidence/growing-tree'
import { hashOfLeaf } from '@/lib/evidence/leaf'
import type { TreeNode } from '@/lib/evidence/tree-ranges'
import { leafOfRow } from '@/lib/server/log/leaf-of-row'
import type { Store, TenantId } from '@/lib/server/store/store'
import { REPROJECT, RESTORE, type Tally } from './tally'

const ROWS_AT_ONCE = 1000

type Computed = TreeNode & { hash: Uint8Array }

/**
 * Check the stored tree of a tenant against one computed from the stored facts, node by node. Gives the roots at the sizes asked for (base64), as far as
 * the facts reach without a gap.
 */
export async function checkTree(
  store: Store,
  tenant: TenantId,
  tally: Tally,
  sizes: ReadonlySet<number>,
): Promise<Map<number, string>> {
  const { treeNodes } = schema
  const [stored] = await store.db.queries
    .select({ last: max(treeNodes.no) })
    .from(treeNodes)
    .where(and(eq(treeNodes.tenant, tenant), eq(treeNodes.level, 0)))
  const storedSize = stored?.last == null ? 0 : stored.last + 1
  const tree = growTree()
  const roots = new Map<number, string>()
  let expectedCount = 0
  for (let reached = -1; reached < tree.size; ) {
    reached = tree.size
    const made: Computed[] = []
    for (const row of await rowsFrom(store, tenant, reached)) {
      const leaf = row.leaf === tree.size ? leafOf(tenant, row) : null
      if (leaf === null) break
      const isStored = tree.size < storedSize
      tree.add(hashOfLeaf(leaf), (node, hash) => isStored && made.push({ ...node, hash }))
      if (sizes.has(tree.size)) roots.set(tree.size, base64Of(tree.root()))
    }
    expectedCount += made.length
    await compare(store, tenant, tally, made)
  }
  await checkNodeCount(store, tenant, tally, { storedSize, reached: tree.size, expectedCount })
  return roots
}

function leafOf(tenant: TenantId, row: Parameters<typeof leafOfRow>[1]): Uint8Array | null {
  try {
    return leafOfRow(tenant, row)
  } catch {
    // Its columns are no leaf: the check of facts names the row.
    return null
  }
}

async function compare(store: Store, tenant: TenantId, tally: Tally, made: readonly Computed[]): Promise<void> {
  const { treeNodes } = schema
  for (const level of new Set(made.map((node) => node.level))) {
    const nodes = made.filter((node) => node.level === level)
    const numbers = nodes.map((node) => node.no)
    const rows = await store.db.queries
      .select()
      .from(treeNodes)
      .where(and(eq(treeNodes.tenant, tenant), eq(treeNodes.level, level), inArray(treeNodes.no, numbers)))
    const stored = new Map(rows.map((row) => [row.no, row.hash]))
    for (const { no, hash } of nodes) {
      const kept = stored.get(no)
      if (kept && isSameBytes(kept, hash)) tally.pass()
      else
        tally.fail({
          place: `tree of the log of ${tenant}, level ${level}, node ${no}`,
          problem: kept ? 'it is not what the stored facts give' : 'it is missing',
          remedy: `${REPROJECT} If a checkpoint is broken too, a fact was changed: restore a backup.`,
        })
    }
  }
}

async function checkNodeCount(
  store: Store,
  tenant: TenantId,
  tally: Tally,
  { storedSize, reached, expectedCount }: { storedSize: number; reached: number; expectedCount: number },
): Promise<void> {
  const { treeNodes } = schema
  const [row] = await store.db.queries
    .select({ nodeCount: count() })
    .from(treeNodes)
    .where(eq(treeNodes.tenant, tenant))
  const place = `tree of the log of ${tenant}`
  if (reached < storedSize)
    tally.fail({ place, problem: `it has ${storedSize} leaves, the stored facts give ${reached}`, remedy: RESTORE })
  else if ((row?.nodeCount ?? 0) > expectedCount)
    tally.fail({ place, problem: 'it holds nodes that no facts give', remedy: REPROJECT })
  else tally.pass()
}

function rowsFrom(store: Store, tenant: TenantId, from: number) {
  const { facts } = schema
  const { leaf, stream, position, sha256, receivedAt, receivedBy } = facts
  return store.db.queries
    .select({ leaf, stream, position, sha256, receivedAt, receivedBy })
    .from(facts)
    .where(and(eq(facts.tenant, tenant), gte(leaf, from), lt(leaf, from + ROWS_AT_ONCE)))
    .orderBy(asc(leaf))
}
