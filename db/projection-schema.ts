import { bigint, boolean, index, integer, jsonb, pgTable, primaryKey, text, timestamp, uuid } from 'drizzle-orm/pg-core'

const instant = (name: string) => timestamp(name, { withTimezone: true })

/** Which stream a fact cites, besides its own. Rebuildable. */
export const factCites = pgTable(
  'fact_cites',
  {
    tenant: text('tenant').notNull(),
    factId: uuid('fact_id').notNull(),
    fromStream: text('from_stream').notNull(),
    toStream: text('to_stream').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.tenant, table.factId, table.toStream] }),
    index('fact_cites_from').on(table.tenant, table.fromStream),
    index('fact_cites_to').on(table.tenant, table.toStream),
  ],
)

/** One row a repair for lists: what the last fold said. Rebuildable. `changesAt` is when time alone changes it. */
export const repairs = pgTable(
  'repairs',
  {
    tenant: text('tenant').notNull(),
    stream: text('stream').notNull(),
    number: text('number').notNull(),
    line: text('line').notNull(),
    status: text('status').notNull(),
    row: jsonb('row').notNull(),
    foldedAt: instant('folded_at').notNull(),
    changesAt: instant('changes_at'),
  },
  (table) => [primaryKey({ columns: [table.tenant, table.stream] })],
)

/** Repairs whose projection is behind the facts: written with the facts, removed by the fold that saw them. */
export const projectionDebts = pgTable(
  'projection_debts',
  {
    tenant: text('tenant').notNull(),
    repair: text('repair').notNull(),
    leaf: bigint('leaf', { mode: 'number' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.tenant, table.repair] })],
)

/** Each use of a batch, instrument or person in a repair. Rebuildable. */
export const uses = pgTable(
  'uses',
  {
    tenant: text('tenant').notNull(),
    repair: text('repair').notNull(),
    no: integer('no').notNull(),
    point: text('point').notNull(),
    attempt: integer('attempt').notNull(),
    fact: uuid('fact').notNull(),
    at: text('at').notNull(),
    atInstant: instant('at_instant').notNull(),
    ofStream: text('of_stream').notNull(),
    role: text('role').notNull(),
    into: text('into'),
    amount: jsonb('amount'),
    isOverruled: boolean('is_overruled').notNull().default(false),
  },
  (table) => [
    primaryKey({ columns: [table.tenant, table.repair, table.no] }),
    index('uses_of_stream').on(table.tenant, table.ofStream, table.atInstant),
  ],
)

/** Dossier revisions issued: which frozen file. Rebuildable. */
export const issues = pgTable(
  'issues',
  {
    tenant: text('tenant').notNull(),
    fact: uuid('fact').notNull(),
    repair: text('repair').notNull(),
    revision: integer('revision').notNull(),
    sha256: text('sha256').notNull(),
    sizeBytes: bigint('size_bytes', { mode: 'number' }).notNull(),
    issuedAt: text('issued_at').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.tenant, table.fact] }),
    index('issues_repair').on(table.tenant, table.repair),
  ],
)
