import { and, asc, eq, gte, max, sql } from 'drizzle-orm'
import { schema } from '@/db/client'
import { growTree } from '@/lib/evidence/growing-tree'
import { hashOfLeaf } from '@/lib/evidence/leaf'
import { nodesOf, type TreeNode } from '@/lib/evidence/tree-ranges'
import type { Transaction } from '@/lib/server/store/heads'
import type { Store, TenantId } from '@/lib/server/store/store'
import { leafOfRow } from './leaf-of-row'
import { LogBroken } from './log-broken'
import { hashesOfTreeNodes } from './tree-nodes'

const LEAVES_AT_ONCE = 2000
const ROWS_AT_ONCE = 1000

/**
 * Bring the stored tree of a tenant up to `size` leaves or more. One writer at a time, in whichever process; each step is one transaction, so a crash
 * leaves a smaller tree, never a torn one. @throws LogBroken `facts-missing` when the leaves of the facts have a gap
 */
export async function extendTree(store: Store, tenant: TenantId, size: number): Promise<void> {
  while ((await treeSize(store.db.queries, tenant)) < size)
    await store.db.queries.transaction(async (tx) => {
      await lockTree(tx, tenant)
      if ((await extendOnce(tx, tenant)) === 0 && (await treeSize(tx, tenant)) < size)
        throw new LogBroken('facts-missing', `The log has not reached ${size} facts.`)
    })
}

/** Drop the stored tree of a tenant and build it again from the facts, in one transaction. @throws LogBroken as `extendTree` does, leaving the tree as it was */
export async function rebuildTree(store: Store, tenant: TenantId): Promise<number> {
  return store.db.queries.transaction((tx) => rebuildTreeIn(tx, tenant))
}

/** The same in a transaction of the caller's; gives the number of leaves. @throws LogBroken `facts-missing` */
export async function rebuildTreeIn(tx: Transaction, tenant: TenantId): Promise<number> {
  await lockTree(tx, tenant)
  await tx.delete(schema.treeNodes).where(eq(schema.treeNodes.tenant, tenant))
  while ((await extendOnce(tx, tenant)) > 0);
  return treeSize(tx, tenant)
}

function lockTree(tx: Transaction, tenant: TenantId) {
  return tx.execute(sql`select pg_advisory_xact_lock(hashtextextended(${`log tree ${tenant}`}, 7719))`)
}

/** How many leaves the stored tree has. */
async function treeSize(queries: Store['db']['queries'] | Transaction, tenant: TenantId): Promise<number> {
  const { treeNodes } = schema
  const [row] = await queries
    .select({ last: max(treeNodes.no) })
    .from(treeNodes)
    .where(and(eq(treeNodes.tenant, tenant), eq(treeNodes.level, 0)))
  return row?.last == null ? 0 : row.last + 1
}

async function extendOnce(tx: Transaction, tenant: TenantId): Promise<number> {
  const size = await treeSize(tx, tenant)
  const { facts, treeNodes } = schema
  const { stream, position, sha256, receivedAt, receivedBy, leaf } = facts
  const rows = await tx
    .select({ stream, position, sha256, receivedAt, receivedBy, leaf })
    .from(facts)
    .where(and(eq(facts.tenant, tenant), gte(leaf, size)))
    .orderBy(asc(leaf))
    .limit(LEAVES_AT_ONCE)
  const edge = size > 0 ? await hashesOfTreeNodes(tx, tenant, nodesOf({ from: 0, to: size })) : []
  const tree = growTree(size, edge)
  const made: (TreeNode & { tenant: string; hash: Buffer })[] = []
  for (const row of rows) {
    if (row.leaf !== tree.size)
      throw new LogBroken(
        'facts-missing',
        `The log lacks leaf ${tree.size}: its facts were removed. Run npm run underwrap -- check-store.`,
      )
    tree.add(hashOfLeaf(leafOfRow(tenant, row)), (node, hash) =>
      made.push({ tenant, ...node, hash: Buffer.from(hash) }),
    )
  }
  for (let at = 0; at < made.length; at += ROWS_AT_ONCE)
    await tx.insert(treeNodes).values(made.slice(at, at + ROWS_AT_ONCE))
  return rows.length
}
