import { and, count, eq, inArray } from 'drizzle-orm'
import { schema } from '@/db/client'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { citesOf } from '@/lib/domain/fold/cites-of'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { issueRow, photoRow } from '@/lib/server/store/insert-looks'
import type { Store, TenantId } from '@/lib/server/store/store'
import { REPROJECT, type Tally } from './tally'

const { factCites, photos, issues } = schema
const TABLES = { fact_cites: factCites, photos, issues } as const
type TableName = keyof typeof TABLES

/** Rows that the facts give in the tables that need no fold, compared with those stored. */
export type LooksCheck = { onFacts(facts: readonly Fact[]): Promise<void>; end(): Promise<void> }

/** Start checking the citations, looks of photos and issues of a tenant. */
export function checkLooks(store: Store, tenant: TenantId, tally: Tally): LooksCheck {
  const expectedCount: Record<TableName, number> = { fact_cites: 0, photos: 0, issues: 0 }

  function compare(table: TableName, expected: readonly Named[], stored: readonly Named[]): void {
    expectedCount[table] += expected.length
    const byName = new Map(stored.map((row) => [row.name, textOf(row.row)]))
    for (const { name, row } of expected) {
      const found = byName.get(name)
      if (found === textOf(row)) tally.pass()
      else
        tally.fail({
          place: `projection ${table} of ${tenant}, ${name}`,
          problem: found === undefined ? 'the row is missing' : 'the row is not what the facts give',
          remedy: REPROJECT,
        })
    }
  }

  return {
    async onFacts(facts) {
      const ids = facts.map((fact) => fact.id)
      if (ids.length === 0) return
      const queries = store.db.queries
      const cites = facts.flatMap((fact) =>
        citesOf(fact).map((toStream) => ({ tenant, factId: fact.id, fromStream: fact.stream, toStream })),
      )
      const citeName = (row: { factId: string; toStream: string }) => `fact ${row.factId} to ${row.toStream}`
      const storedCites = await queries
        .select()
        .from(factCites)
        .where(and(eq(factCites.tenant, tenant), inArray(factCites.factId, ids)))
      compare('fact_cites', named(cites, citeName), named(storedCites, citeName))
      const factName = (row: { fact: string }) => `fact ${row.fact}`
      const looks = facts.flatMap((fact) => (fact.kind === 'photo-attached' ? [photoRow(tenant, fact)] : []))
      const issued = facts.flatMap((fact) => (fact.kind === 'dossier-issued' ? [issueRow(tenant, fact)] : []))
      const storedLooks = await queries
        .select()
        .from(photos)
        .where(and(eq(photos.tenant, tenant), inArray(photos.fact, ids)))
      const storedIssues = await queries
        .select()
        .from(issues)
        .where(and(eq(issues.tenant, tenant), inArray(issues.fact, ids)))
      compare('photos', named(looks, factName), named(storedLooks, factName))
      compare('issues', named(issued, factName), named(storedIssues, factName))
    },
    async end() {
      for (const table of ['fact_cites', 'photos', 'issues'] as const) {
        const [row] = await store.db.queries
          .select({ rowCount: count() })
          .from(TABLES[table])
          .where(eq(TABLES[table].tenant, tenant))
        const extra = (row?.rowCount ?? 0) - expectedCount[table]
        if (extra > 0)
          tally.fail({
            place: `projection ${table} of ${tenant}`,
            problem: `it holds ${extra} rows that no fact gives`,
            remedy: REPROJECT,
          })
        else tally.pass()
      }
    },
  }
}

type Named = { name: string; row: object }

function named<R extends object>(rows: readonly R[], nameOf: (row: R) => string): Named[] {
  return rows.map((row) => ({ name: nameOf(row), row }))
}

function textOf(row: object): string {
  const plain = JSON.stringify(row, (_, value) => (typeof value === 'bigint' ? value.toString() : value))
  return new TextDecoder().decode(canonicalBytes(JSON.parse(plain)))
}
