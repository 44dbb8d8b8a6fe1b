import { v7 } from 'uuid'
import { done } from '@/lib/domain/result'
import { allotNumbers } from '@/lib/server/commands/allot-numbers'
import { attachPhoto } from '@/lib/server/commands/attach-photo'
import type { Command } from '@/lib/server/commands/command'
import { exportLog } from '@/lib/server/commands/export-log'
import { exportTrace } from '@/lib/server/commands/export-trace'
import { exportTrailSearch } from '@/lib/server/commands/export-trail-search'
import { listNumberGrounds } from '@/lib/server/commands/list-number-grounds'
import { loadJob } from '@/lib/server/commands/load-job'
import { openIssuedDossier, openReviewDossier } from '@/lib/server/commands/open-dossier'
import { openPackage } from '@/lib/server/commands/open-package'
import { openPhoto } from '@/lib/server/commands/open-photo'
import { openProjectPack } from '@/lib/server/commands/open-project-pack'
import { openSitePack } from '@/lib/server/commands/open-site-pack'
import { openTrailFact } from '@/lib/server/commands/open-trail-fact'
import { proveConsistency } from '@/lib/server/commands/prove-consistency'
import { receiveEntries } from '@/lib/server/commands/receive-entries'
import { receivePiece } from '@/lib/server/commands/receive-piece'
import type { Refusal } from '@/lib/server/commands/refusal'
import { NOW } from '@/test/commands/world'
import { PERMIT } from '@/test/commands/world-facts'
import { ACTION_ROWS } from './action-rows'
import type { Row } from './authorisation-row'
import { signedBody, tabletAcceptance, tabletEntry, tabletRelease } from './prepared-signing'
import { PHOTO_SHA256 } from './prepared-world'

/** Actions and routes that run nothing of a record, with why they stand open or answer by themselves. */
export const OPEN: Readonly<Record<string, string>> = {
  signInAction: 'the door: it makes a session for the right password alone',
  setUpAction: 'the door of an empty store: it asks for the one-time code',
  acceptInvitationAction: 'the door of an invited person: it asks for the link’s token',
  leave: 'ends the caller’s own session',
  '/api/auth/[...all]': 'sign-in and sign-out; every other path of the library is closed',
  '/api/clock': 'tells the time to whoever is signed in',
  '/manifest.webmanifest': 'what a phone needs for its home screen, the same for everyone',
  '/serwist/[path]': 'the service worker’s program, the same for everyone',
}

/** One entry of the caller's own outbox, answered as its command answers. */
const receiveOne: Command<unknown> = async (actor, input) => {
  const received = await receiveEntries(actor, { v: 1, tenant: actor.tenant, person: actor.person, entries: [input] })
  if (!received.ok) throw new Error(received.error.code)
  const [answered] = received.value
  if (answered?.kind === 'refused') return { ok: false, error: answered.refusal as Refusal }
  return done(answered)
}

const noBytes = async () => done(new Uint8Array())

// biome-ignore format: one row a line
export const ROUTE_ROWS: readonly Row[] = [
  { name: '/api/photos', run: (actor, input) => attachPhoto(actor, input, noBytes), may: ['technician', 'lead', 'inspector', 'stores', 'in-service inspector'], input: () => ({ stream: 'repair:R-1', body: { point: '05', attempt: 1, caption: 'permit board' } }) },
  { name: '/api/outbox', run: receiveOne, may: ['technician', 'lead', 'inspector'], input: () => ({ id: v7(), command: 'record-point', photos: [], madeOffline: false, input: { stream: 'repair:R-1', body: { point: '05', attempt: 1, record: PERMIT }, observedAt: NOW, enteredAt: NOW, device: { id: 'tab-1', clockOffsetMs: null } } }) },
  { name: '/api/outbox', run: receiveOne, may: ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'auditor', 'in-service inspector'], input: ({ names }) => tabletEntry('sign-on-device', { body: signedBody(names, 'measured') }) },
  { name: '/api/outbox', run: receiveOne, may: ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'auditor', 'in-service inspector'], input: async ({ names, heads }) => tabletRelease(names, await heads()) },
  { name: '/api/outbox', run: receiveOne, may: ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'auditor', 'in-service inspector'], input: async ({ names, heads }) => tabletAcceptance(names, await heads()) },
  { name: '/api/outbox/photos/[sha256]', run: (actor, input) => receivePiece(actor, input, async () => done(new Uint8Array(5))) as ReturnType<Command<unknown>>, may: ['technician', 'lead', 'inspector', 'stores', 'in-service inspector'], input: () => ({ sha256: PHOTO_SHA256, offset: 0, sizeBytes: 1000 }) },
  { name: '/api/photos/[sha256]/[size]', run: openPhoto, may: ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'auditor', 'in-service inspector'], input: () => ({ sha256: PHOTO_SHA256, size: 'thumb' }) },
  { name: '/api/site/[number]', run: openSitePack, may: ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'auditor', 'in-service inspector'], input: () => ({ repair: 'repair:R-1' }) },
  { name: '/api/numbers', run: listNumberGrounds, may: ['lead', 'inspector'], input: () => ({ device: 'tab-1' }) },
  { name: '/api/numbers', run: allotNumbers, may: ['lead', 'inspector'], input: () => ({ id: v7(), device: 'tab-1', project: 'project:P-1', prefix: 'N-', digits: 4, count: 2 }) },
  { name: '/api/numbers/[project]', run: openProjectPack, may: ['lead', 'inspector'], input: () => ({ project: 'project:P-1', device: 'tab-1' }) },
  { name: '/api/dossiers/[repair]/[revision]', run: openIssuedDossier, may: ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'auditor', 'in-service inspector'], input: () => ({ repair: 'R-1', revision: '0' }) },
  { name: '/api/dossiers/[repair]/review', run: openReviewDossier, may: ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'auditor', 'in-service inspector'], input: () => ({ repair: 'R-1' }) },
  { name: '/api/dossiers/[repair]/package/[revision]', run: openPackage, may: ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'auditor', 'in-service inspector'], input: () => ({ repair: 'R-1', revision: 'review' }) },
  { name: '/api/jobs/[key]', run: loadJob, may: ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'auditor', 'in-service inspector'], input: () => ({ key: 'dossier-R-1' }) },
  { name: '/api/audit/log', run: exportLog, may: ['inspector', 'auditor'], input: () => ({}) },
  { name: '/api/audit/consistency', run: proveConsistency, may: ['inspector', 'auditor'], input: () => ({ from: '1' }) },
  { name: '/api/audit/search', run: exportTrailSearch, may: ['inspector', 'auditor'], input: () => ({ person: 'QI' }) },
  { name: '/api/audit/facts/[id]/[part]', run: openTrailFact, may: ['inspector', 'auditor'], input: (world) => ({ id: world.names.record, part: 'inclusion.json' }) },
  { name: '/api/trace/[kind]/[name]', run: exportTrace, may: ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'auditor', 'in-service inspector'], input: () => ({ kind: 'batch', name: 'FP-1' }) },
]

export { ACTION_ROWS }
