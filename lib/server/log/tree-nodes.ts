import { sql } from 'drizzle-orm'
import type { Queries } from '@/db/client'
import { hashOfNodes, type LeafRange, nodesOf, type TreeNode } from '@/lib/evidence/tree-ranges'
import type { Transaction } from '@/lib/server/store/heads'
import type { TenantId } from '@/lib/server/store/store'
import { LogBroken } from './log-broken'

const NODES_AT_ONCE = 5000

const nameOf = ({ level, no }: TreeNode) => `${level}/${no}`

/** Hashes of the ranges, each from its complete subtrees as stored; one read for many. @throws LogBroken `facts-missing` when the stored tree is too small or has a gap */
export async function hashesOfRanges(
  queries: Queries | Transaction,
  tenant: TenantId,
  ranges: readonly LeafRange[],
): Promise<Uint8Array[]> {
  const nodes = await loadNodes(queries, tenant, ranges.flatMap(nodesOf))
  return ranges.map((range) => hashOfNodes(nodesOf(range).map((node) => found(nodes, node))))
}

/** Stored hashes of subtrees, by level and number, in the order asked for. @throws LogBroken `facts-missing` */
export async function hashesOfTreeNodes(
  queries: Queries | Transaction,
  tenant: TenantId,
  wanted: readonly TreeNode[],
): Promise<Uint8Array[]> {
  const nodes = await loadNodes(queries, tenant, wanted)
  return wanted.map((node) => found(nodes, node))
}

function found(nodes: ReadonlyMap<string, Uint8Array>, node: TreeNode): Uint8Array {
  const hash = nodes.get(nameOf(node))
  if (!hash)
    throw new LogBroken(
      'facts-missing',
      `The stored tree of the log lacks node ${node.no} of level ${node.level}: npm run underwrap -- check-store tells more.`,
    )
  return hash
}

async function loadNodes(
  queries: Queries | Transaction,
  tenant: TenantId,
  wanted: readonly TreeNode[],
): Promise<Map<string, Uint8Array>> {
  const distinct = [...new Map(wanted.map((node) => [nameOf(node), node])).values()]
  const nodes = new Map<string, Uint8Array>()
  for (let at = 0; at < distinct.length; at += NODES_AT_ONCE) {
    const some = distinct.slice(at, at + NODES_AT_ONCE)
    const levels = sql.param(some.map((node) => node.level))
    const numbers = sql.param(some.map((node) => node.no))
    const answer = await queries.execute<{ level: number; no: string; hash: Buffer }>(sql`
      select n.level, n.no, n.hash from unnest(${levels}::int[], ${numbers}::bigint[]) as w (level, no)
        join tree_nodes n on n.tenant = ${tenant} and n.level = w.level and n.no = w.no`)
    for (const row of answer.rows) nodes.set(`${row.level}/${row.no}`, new Uint8Array(row.hash))
  }
  return nodes
}
