import type { StreamId } from '@/lib/domain/facts/fact'
import { loadAccountRows } from '@/lib/server/views/account-list-view'
import { loadAuditFact } from '@/lib/server/views/audit-fact-view'
import { loadAuditHead } from '@/lib/server/views/audit-head-view'
import { loadAuditSample } from '@/lib/server/views/audit-sample-view'
import { loadAuditSearch } from '@/lib/server/views/audit-search-view'
import { loadBatchRows } from '@/lib/server/views/batch-list-view'
import { loadBatchView } from '@/lib/server/views/batch-view'
import { loadCaptureView } from '@/lib/server/views/capture-view'
import { loadDesignView } from '@/lib/server/views/design-view'
import { loadInstrumentRows } from '@/lib/server/views/instrument-list-view'
import { loadInstrumentView } from '@/lib/server/views/instrument-view'
import { loadBatchLabel, loadInstrumentLabel, loadRepairLabel } from '@/lib/server/views/label-view'
import { loadNonconformanceList } from '@/lib/server/views/nonconformance-list-view'
import { loadNonconformanceView } from '@/lib/server/views/nonconformance-view'
import { loadOpenRepairView } from '@/lib/server/views/open-repair-view'
import { loadPersonRows } from '@/lib/server/views/person-list-view'
import { loadPersonView } from '@/lib/server/views/person-view'
import { loadPlanRows } from '@/lib/server/views/plan-list-view'
import { loadPlanView } from '@/lib/server/views/plan-view'
import { loadPointView } from '@/lib/server/views/point-view'
import { loadProjectRows } from '@/lib/server/views/project-list-view'
import { loadProjectView } from '@/lib/server/views/project-view'
import { loadQuantityView } from '@/lib/server/views/quantity-view'
import { loadNames, type ReadingDesk } from '@/lib/server/views/reading-desk'
import { loadRegisterView } from '@/lib/server/views/register-view'
import { loadRepairStates } from '@/lib/server/views/repair-list-view'
import { loadRepairView } from '@/lib/server/views/repair-view'
import { loadScanView, type ScanView } from '@/lib/server/views/scan-view'
import { loadSpecificationRows } from '@/lib/server/views/specification-list-view'
import { loadSpecificationView } from '@/lib/server/views/specification-view'
import { loadTallyView } from '@/lib/server/views/tally-view'
import { traceBatchView } from '@/lib/server/views/trace-batch-view'
import { traceInstrumentView } from '@/lib/server/views/trace-instrument-view'
import { tracePersonView } from '@/lib/server/views/trace-person-view'
import { traceRepairView } from '@/lib/server/views/trace-repair-view'
import { loadTrailView } from '@/lib/server/views/trail-view'
import { loadWaitingView } from '@/lib/server/views/waiting-view'
import { KNOWN_FACT_ID } from './prepared-names'

/** A page of the record and what it reads; asked with names of tenant A, nothing of A may come back to another tenant. */
export type PageRow = { path: string; load: (reading: ReadingDesk) => Promise<unknown> }

/** Pages that read nothing of a record, with what they are. */
export const OPEN_PAGES: Readonly<Record<string, string>> = {
  '/': 'sends on to what waits',
  '/sign-in': 'the door',
  '/setup': 'the door of an empty store',
  '/invitation/[token]': 'the door of an invited person; it names no one without the token',
  '/check': 'checks a file that anyone brings, in the browser',
  '/site': 'a shell that holds nothing: it draws what this device keeps',
  '/trace': 'a search field; it sends on to a trace',
  '/_not-found': 'says that a page is not there',
}

const ever = { from: null, to: null }
/** Only what was found: the words of the label are the asker's own. */
const hitsOf = (view: ScanView) => (view.kind === 'read' ? [view.hits, view.doubts] : view)
const at = (name: string) => name as StreamId

// biome-ignore format: one row a line
export const PAGE_ROWS: readonly PageRow[] = [
  { path: '/accounts', load: loadAccountRows },
  { path: '/audit', load: loadAuditHead },
  { path: '/audit/search', load: (reading) => loadAuditSearch(reading, {}, 1, '+01:00') },
  { path: '/audit/sample', load: (reading) => loadAuditSample(reading, { seed: 'a seed' }, '+01:00') },
  { path: '/audit/facts/[id]', load: (reading) => loadAuditFact(reading, KNOWN_FACT_ID) },
  { path: '/batches', load: loadBatchRows },
  { path: '/batches/[name]/label', load: (reading) => loadBatchLabel(reading, at('batch:FP-1')) },
  { path: '/batches/[name]', load: (reading) => loadBatchView(reading, at('batch:FP-1')) },
  { path: '/instruments', load: loadInstrumentRows },
  { path: '/instruments/[name]/label', load: (reading) => loadInstrumentLabel(reading, at('instrument:HD-1')) },
  { path: '/instruments/[name]', load: (reading) => loadInstrumentView(reading, at('instrument:HD-1')) },
  { path: '/nonconformances', load: loadNonconformanceList },
  { path: '/nonconformances/new', load: loadNonconformanceList },
  { path: '/nonconformances/[number]', load: (reading) => loadNonconformanceView(reading, at('nonconformance:N-raised')) },
  { path: '/people', load: loadPersonRows },
  { path: '/people/[id]', load: (reading) => loadPersonView(reading, at('person:QI')) },
  { path: '/plans', load: loadPlanRows },
  { path: '/plans/new', load: loadPlanRows },
  { path: '/plans/[number]', load: (reading) => loadPlanView(reading, at('plan:ITP-T')) },
  { path: '/plans/[number]/draft', load: (reading) => loadPlanView(reading, at('plan:ITP-2'), 'draft') },
  { path: '/projects', load: loadProjectRows },
  { path: '/projects/[name]', load: (reading) => loadProjectView(reading, at('project:P-1'), null) },
  { path: '/register', load: async (reading) => loadRegisterView(reading, await loadNames(reading.desk)) },
  { path: '/repairs', load: loadRepairStates },
  { path: '/repairs/new', load: loadOpenRepairView },
  { path: '/repairs/[number]', load: (reading) => loadRepairView(reading, 'R-1') },
  { path: '/repairs/[number]/label', load: (reading) => loadRepairLabel(reading, 'R-1') },
  { path: '/scan', load: async (reading) => hitsOf(await loadScanView(reading, '(10)FP-1')) },
  { path: '/repairs/[number]/accept', load: (reading) => loadRepairView(reading, 'R-1') },
  { path: '/repairs/[number]/design', load: (reading) => loadDesignView(reading, 'R-1') },
  { path: '/repairs/[number]/quantities', load: (reading) => loadQuantityView(reading, 'R-1', {}) },
  { path: '/repairs/[number]/dossier', load: (reading) => loadRepairView(reading, 'R-1') },
  { path: '/repairs/[number]/notices', load: (reading) => loadRepairView(reading, 'R-1') },
  { path: '/repairs/[number]/trail', load: (reading) => loadTrailView(reading, 'R-1') },
  { path: '/repairs/[number]/points/[point]', load: (reading) => loadPointView(reading, 'R-1', '05', null) },
  { path: '/repairs/[number]/points/[point]/tally', load: (reading) => loadTallyView(reading, 'R-1', '05', null) },
  { path: '/repairs/[number]/points/[point]/transcribe', load: (reading) => loadPointView(reading, 'R-1', '05', null) },
  { path: '/repairs/[number]/points/[point]/check/[fact]', load: (reading) => loadPointView(reading, 'R-1', '06', null) },
  { path: '/repairs/[number]/points/[point]/record/[type]', load: (reading) => loadCaptureView(reading, 'R-1', '05', 1, null) },
  { path: '/repairs/[number]/points/[point]/correct/[fact]', load: (reading) => loadCaptureView(reading, 'R-1', '05', 1, null) },
  { path: '/specifications', load: loadSpecificationRows },
  { path: '/specifications/new', load: loadSpecificationRows },
  { path: '/specifications/[number]', load: (reading) => loadSpecificationView(reading, at('specification:S-1')) },
  { path: '/specifications/[number]/draft', load: (reading) => loadSpecificationView(reading, at('specification:S-2'), 'draft') },
  { path: '/trace/batch/[name]', load: ({ desk, actor }) => traceBatchView(desk.store, actor.tenant, 'FP-1') },
  { path: '/trace/instrument/[name]', load: ({ desk, actor }) => traceInstrumentView(desk.store, actor.tenant, 'HD-1', ever) },
  { path: '/trace/person/[name]', load: ({ desk, actor }) => tracePersonView(desk.store, actor.tenant, 'QI', ever) },
  { path: '/trace/repair/[name]', load: ({ desk, actor }) => traceRepairView(desk.store, actor.tenant, 'R-1') },
  { path: '/waiting', load: loadWaitingView },
]
