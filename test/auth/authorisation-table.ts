import { done } from '@/lib/domain/result'
import { attachPhoto } from '@/lib/server/commands/attach-photo'
import { exportLog } from '@/lib/server/commands/export-log'
import { exportTrace } from '@/lib/server/commands/export-trace'
import { exportTrailSearch } from '@/lib/server/commands/export-trail-search'
import { loadJob } from '@/lib/server/commands/load-job'
import { openIssuedDossier, openReviewDossier } from '@/lib/server/commands/open-dossier'
import { openPackage } from '@/lib/server/commands/open-package'
import { openPhoto } from '@/lib/server/commands/open-photo'
import { openTrailFact } from '@/lib/server/commands/open-trail-fact'
import { proveConsistency } from '@/lib/server/commands/prove-consistency'
import { ACTION_ROWS } from './action-rows'
import type { Row } from './authorisation-row'
import { PHOTO_SHA256 } from './prepared-world'

/** Actions and routes that run nothing of a record, with why they stand open or answer by themselves. */
export const OPEN: Readonly<Record<string, string>> = {
  signInAction: 'the door: it makes a session for the right password alone',
  setUpAction: 'the door of an empty store: it asks for the one-time code',
  acceptInvitationAction: 'the door of an invited person: it asks for the link’s token',
  leave: 'ends the caller’s own session',
  '/api/auth/[...all]': 'sign-in and sign-out; every other path of the library is closed',
  '/api/clock': 'tells the time to whoever is signed in',
}

const noBytes = async () => done(new Uint8Array())

// biome-ignore format: one row a line
export const ROUTE_ROWS: readonly Row[] = [
  { name: '/api/photos', run: (actor, input) => attachPhoto(actor, input, noBytes), may: ['technician', 'lead', 'inspector', 'stores', 'in-service inspector'], input: () => ({ stream: 'repair:R-1', body: { point: '05', attempt: 1, caption: 'permit board' } }) },
  { name: '/api/photos/[sha256]/[size]', run: openPhoto, may: ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'auditor', 'in-service inspector'], input: () => ({ sha256: PHOTO_SHA256, size: 'thumb' }) },
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
