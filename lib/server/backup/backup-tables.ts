import { sql } from 'drizzle-orm'
import type { Queries } from '@/db/client'
import type { Transaction } from '@/lib/server/store/heads'

/** Not kept in a backup: what is rebuilt from the facts, the progress of jobs, and sessions, so that everybody signs in again. */
const LEFT_OUT: ReadonlySet<string> = new Set([
  'fact_cites',
  'photos',
  'issues',
  'projection_debts',
  'repairs',
  'uses',
  'tree_nodes',
  'job_progress',
  'session',
])
/** Others refer to these. */
const FIRST = ['tenants', 'user', 'organization']
const ROWS_AT_ONCE = 200

/** Tables that a backup keeps, in an order in which they can be filled. */
export async function keptTables(queries: Queries | Transaction): Promise<string[]> {
  const answer = await queries.execute<{ name: string }>(
    sql`select table_name as name from information_schema.tables where table_schema = 'public' and table_type = 'BASE TABLE' order by 1`,
  )
  const names = answer.rows.map((row) => row.name).filter((name) => !LEFT_OUT.has(name))
  return [...FIRST.filter((name) => names.includes(name)), ...names.filter((name) => !FIRST.includes(name))]
}

/** Every row of a table as one line of JSON, as PostgreSQL writes it. In a transaction; one table at a time. */
export async function* rowsAsLines(queries: Queries, table: string): AsyncGenerator<Buffer> {
  await queries.execute(
    sql`declare backup_rows no scroll cursor for select row_to_json(t)::text as line from ${sql.identifier(table)} t`,
  )
  for (;;) {
    const { rows } = await queries.execute<{ line: string }>(sql.raw(`fetch ${ROWS_AT_ONCE} from backup_rows`))
    if (rows.length === 0) break
    yield Buffer.from(rows.map((row) => `${row.line.replaceAll('\n', ' ')}\n`).join(''))
  }
  await queries.execute(sql`close backup_rows`)
}

/** Put rows, as lines of JSON, into a table. Columns that the lines do not name take their default. @throws when a row does not fit the table */
export async function insertLines(tx: Transaction, table: string, lines: readonly string[]): Promise<void> {
  const [first] = lines
  if (first === undefined) return
  const columns = sql.join(
    Object.keys(JSON.parse(first)).map((name) => sql.identifier(name)),
    sql`, `,
  )
  await tx.execute(
    sql`insert into ${sql.identifier(table)} (${columns}) select ${columns} from json_populate_recordset(null::${sql.identifier(table)}, ${`[${lines.join(',')}]`}::json)`,
  )
}
