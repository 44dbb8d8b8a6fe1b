import {
  bigint,
  boolean,
  customType,
  index,
  integer,
  jsonb,
  pgTable,
  primaryKey,
  text,
  timestamp,
  uniqueIndex,
  uuid,
} from 'drizzle-orm/pg-core'

const bytea = customType<{ data: Buffer }>({ dataType: () => 'bytea' })
const instant = (name: string) => timestamp(name, { withTimezone: true })

/** The holder of a record: its id is the better-auth organisation's. `leafCount` is the number of facts received so far. */
export const tenants = pgTable('tenants', {
  id: text('id').primaryKey(),
  slug: text('slug').notNull().unique(),
  name: text('name').notNull(),
  isDemo: boolean('is_demo').notNull().default(false),
  leafCount: bigint('leaf_count', { mode: 'number' }).notNull().default(0),
  createdAt: instant('created_at').notNull().defaultNow(),
})

/** Source of truth, appended only. `bytes` is the canonical JSON exactly as hashed; `leaf` the order of receipt within the tenant. */
export const facts = pgTable(
  'facts',
  {
    tenant: text('tenant')
      .notNull()
      .references(() => tenants.id),
    stream: text('stream').notNull(),
    position: integer('position').notNull(),
    id: uuid('id').notNull(),
    leaf: bigint('leaf', { mode: 'number' }).notNull(),
    kind: text('kind').notNull(),
    observedAt: instant('observed_at').notNull(),
    sha256: text('sha256').notNull(),
    bytes: bytea('bytes').notNull(),
    /** The moment of receipt as stamped, with its offset. */
    receivedAt: text('received_at').notNull(),
    receivedBy: text('received_by').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.tenant, table.stream, table.position] }),
    uniqueIndex('facts_tenant_id').on(table.tenant, table.id),
    uniqueIndex('facts_tenant_leaf').on(table.tenant, table.leaf),
    index('facts_tenant_kind').on(table.tenant, table.kind, table.observedAt),
  ],
)

/** The person whom a signed-in account is, per tenant. */
export const accountPersons = pgTable(
  'account_persons',
  { userId: text('user_id').notNull(), tenant: text('tenant').notNull(), personId: text('person_id').notNull() },
  (table) => [
    primaryKey({ columns: [table.userId, table.tenant] }),
    uniqueIndex('account_persons_person').on(table.tenant, table.personId),
  ],
)

/** One-time codes that make the first administrator; only the digest is kept. */
export const setupCodes = pgTable('setup_codes', {
  codeSha256: text('code_sha256').primaryKey(),
  madeAt: instant('made_at').notNull().defaultNow(),
  usedAt: instant('used_at'),
})

/** Half-filled forms, so that nothing keyed is lost. Not part of the record. */
export const drafts = pgTable(
  'drafts',
  {
    tenant: text('tenant').notNull(),
    userId: text('user_id').notNull(),
    key: text('key').notNull(),
    json: jsonb('json').notNull(),
    updatedAt: instant('updated_at').notNull().defaultNow(),
  },
  (table) => [primaryKey({ columns: [table.tenant, table.userId, table.key] })],
)

/** How far a long job is, by a key its asker knows. */
export const jobProgress = pgTable(
  'job_progress',
  {
    tenant: text('tenant').notNull(),
    key: text('key').notNull(),
    task: text('task').notNull(),
    state: text('state').notNull(),
    doneCount: integer('done_count').notNull().default(0),
    totalCount: integer('total_count'),
    note: text('note'),
    result: jsonb('result'),
    updatedAt: instant('updated_at').notNull().defaultNow(),
  },
  (table) => [primaryKey({ columns: [table.tenant, table.key] })],
)

/** Hashes of complete subtrees of a tenant's log: `level` 0 are leaf hashes. Follows the facts when a checkpoint is made. Rebuildable. */
export const treeNodes = pgTable(
  'tree_nodes',
  {
    tenant: text('tenant').notNull(),
    level: integer('level').notNull(),
    no: bigint('no', { mode: 'number' }).notNull(),
    hash: bytea('hash').notNull(),
  },
  (table) => [primaryKey({ columns: [table.tenant, table.level, table.no] })],
)

/** Every checkpoint that was signed: heads that may have left this store. Appended only; `note` is the signed text. */
export const checkpoints = pgTable(
  'checkpoints',
  {
    tenant: text('tenant').notNull(),
    size: bigint('size', { mode: 'number' }).notNull(),
    root: text('root').notNull(),
    note: text('note').notNull(),
    madeAt: instant('made_at').notNull().defaultNow(),
  },
  (table) => [primaryKey({ columns: [table.tenant, table.size] })],
)

/** Facts about the store itself: the demo clock's origin, the mark of a test store. */
export const storeMarks = pgTable('store_marks', { key: text('key').primaryKey(), value: jsonb('value').notNull() })

/** Look of every photo attached to a repair. Rebuildable. Hashes are 16 hex digits. */
export const photos = pgTable(
  'photos',
  {
    tenant: text('tenant').notNull(),
    fact: uuid('fact').notNull(),
    repair: text('repair').notNull(),
    point: text('point').notNull(),
    attempt: integer('attempt').notNull(),
    sha256: text('sha256').notNull(),
    dHash: text('d_hash').notNull(),
    pHash: text('p_hash').notNull(),
    dHashBits: bigint('d_hash_bits', { mode: 'bigint' }).notNull(),
    renditionSha256: text('rendition_sha256').notNull(),
    thumbSha256: text('thumb_sha256').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.tenant, table.fact] }),
    index('photos_sha256').on(table.tenant, table.sha256),
    index('photos_rendition').on(table.tenant, table.renditionSha256),
    index('photos_thumb').on(table.tenant, table.thumbSha256),
    index('photos_repair').on(table.tenant, table.repair),
  ],
)
