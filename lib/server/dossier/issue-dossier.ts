import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { v7 as makeId } from 'uuid'
import {
  Sha256 as Digest,
  FactId,
  type PersonId,
  type Sha256,
  type StreamId,
  streamName,
  streamOf,
} from '@/lib/domain/facts/fact'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { done, type Result, refused } from '@/lib/domain/result'
import type { Moment } from '@/lib/domain/time'
import { type BuiltDossier, buildDossier, type DossierProgress } from '@/lib/dossier/build-dossier'
import { type DossierInput, TEMPLATE } from '@/lib/dossier/dossier-input'
import type { DossierSeal } from '@/lib/dossier/dossier-seal'
import { appendFacts } from '@/lib/server/store/append-facts'
import { headsOf } from '@/lib/server/store/heads'
import type { Store, TenantId } from '@/lib/server/store/store'
import { gatherDossier } from './gather-dossier'
import { sealDossier } from './seal-dossier'

export type DossierOrder = {
  repair: StreamId
  purpose: string
  changes: readonly string[]
  actor: PersonId
  /** Only the demo's seed states the moment of issue. */
  receivedAt?: Moment
  onProgress?: (progress: DossierProgress) => void
}
export type IssuedDossier = {
  fact: FactId
  revision: number
  sha256: Sha256
  sizeBytes: number
  pageCount: number
  missing: string[]
}
export type IssueRefusal =
  | { code: 'not-found' }
  | { code: 'changes-missing'; supersedes: number }
  | { code: 'record-moving'; tries: number }

const TRIES = 3

type SealedInput = DossierInput & { seal: DossierSeal }

/**
 * Issue the next revision of a repair's dossier: take a checkpoint, build and sign the file aside, store it under its digest, then append the fact that cites it. What was
 * issued is never built again. A crash before the fact, or a time-stamp service that fails, leaves nothing issued. When the record moves while the file is built, it is built anew. Who may issue is the caller's to have decided.
 * Refuses `not-found`; `changes-missing` when an earlier revision is superseded and nothing is said of what changed; `record-moving` when the record moved at every try.
 * @throws when the disk refuses, stored bytes are broken, the log or the certificate cannot sign, or the time stamp that was asked for is not given
 */
export async function issueDossier(
  store: Store,
  tenant: TenantId,
  order: DossierOrder,
): Promise<Result<IssuedDossier, IssueRefusal>> {
  const folder = await mkdtemp(join(tmpdir(), 'underwrap-dossier-'))
  try {
    for (let attempt = 1; attempt <= TRIES; attempt += 1) {
      const issued = await tryIssue(store, tenant, order, join(folder, `${attempt}.pdf`))
      if (issued !== 'moved') return issued
    }
    return refused({ code: 'record-moving', tries: TRIES })
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

async function tryIssue(
  store: Store,
  tenant: TenantId,
  order: DossierOrder,
  path: string,
): Promise<Result<IssuedDossier, IssueRefusal> | 'moved'> {
  const at = order.receivedAt ?? store.now()
  const stream = streamOf('dossier', streamName(order.repair))
  const [own] = await headsOf(store, tenant, [stream])
  const gathered = await gatherDossier(store, tenant, order.repair, { kind: 'for review' }, at)
  if (!gathered || !own) return refused({ code: 'not-found' })
  const last = gathered.input.state.issues.at(-1)?.fact.body.revision
  if (last !== undefined && order.changes.length === 0) return refused({ code: 'changes-missing', supersedes: last })
  const revision = last === undefined ? 0 : last + 1
  const seal = await sealDossier(store, tenant, gathered, order.actor, order.receivedAt)
  if (seal === 'moved') return 'moved'
  const input: SealedInput = {
    ...gathered.input,
    head: { kind: 'issue', revision, purpose: order.purpose, changes: order.changes },
    seal,
  }
  const built = await buildDossier(input, store.photos, path, order.onProgress)
  await store.photos.put(built.sha256, { path })
  const fact = issueFact(order, stream, input, built, revision)
  const heads = [...gathered.heads.filter((head) => head.stream !== stream), own]
  const appended = await appendFacts(store, tenant, [fact], {
    receivedBy: order.actor,
    expectHeads: heads,
    ...(order.receivedAt ? { receivedAt: order.receivedAt } : {}),
  })
  if (appended.ok)
    return done({
      fact: fact.id,
      revision,
      sha256: fact.body.sha256,
      sizeBytes: built.sizeBytes,
      pageCount: built.pageCount,
      missing: built.missing,
    })
  if (appended.error.code === 'heads-moved') return 'moved'
  if (appended.error.code === 'tenant-unknown') return refused({ code: 'not-found' })
  throw new Error(`The fact of an issue was refused: ${JSON.stringify(appended.error)}`)
}

function issueFact(
  order: DossierOrder,
  stream: StreamId,
  { state, facts, seal }: SealedInput,
  built: BuiltDossier,
  revision: number,
): FactOf<'dossier-issued'> {
  const { asOf } = state
  return {
    v: 1,
    id: FactId.parse(makeId()),
    stream,
    kind: 'dossier-issued',
    observedAt: asOf,
    observedBy: order.actor,
    enteredAt: asOf,
    enteredBy: order.actor,
    device: { id: 'server', clockOffsetMs: 0 },
    body: {
      repair: order.repair,
      revision,
      purpose: order.purpose,
      changes: [...order.changes],
      sha256: Digest.parse(built.sha256),
      sizeBytes: built.sizeBytes,
      pageCount: built.pageCount,
      asOf,
      factCount: facts.length,
      template: TEMPLATE,
      rules: state.rules,
      missing: built.missing.slice(0, 400).map((text) => text.slice(0, 300)),
      log: { size: seal.checkpoint.size, root: seal.checkpoint.root },
    },
  }
}
