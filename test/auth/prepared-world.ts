import { v7 } from 'uuid'
import { decimal } from '@/lib/domain/decimal'
import { FactId, PersonId, type StreamId } from '@/lib/domain/facts/fact'
import { openWorld, type World } from '@/test/commands/world'
import { openedFact, PERMIT, PLAN, SPECIFICATION } from '@/test/commands/world-facts'
import { photoBody } from '@/test/domain/fold/photo-body'
import { type FactJson, factJson } from '@/test/store/facts-for-tests'
import { KNOWN_FACT_ID, type Names } from './prepared-names'
import { nonconformances } from './prepared-nonconformances'
import { signing } from './prepared-signing'

const repair = 'repair:R-1' as StreamId
const by = (person: string) => ({ observedBy: person, enteredBy: person })
const id = () => FactId.parse(v7())

export type Prepared = World & { names: Names }

/** A world in which every act of the table could be done by someone with the right: records, photos, a release, nonconformances in each state. */
export async function openPreparedWorld(): Promise<Prepared> {
  const world = await openWorld()
  const names = Object.fromEntries(
    [
      'record',
      'copied',
      'other',
      'photo',
      'otherPhoto',
      'release',
      'notice',
      'query',
      'acceptance',
      'issue',
      'grant',
      'proposal',
      'action',
      'key',
      'conflict',
    ].map((name) => [name, id()]),
  ) as Names
  await world.put([...repairFacts(names), ...nonconformances(names), ...storeFacts(names), ...signing(names)])
  return { ...world, names }
}

export const PHOTO_SHA256 = 'a'.repeat(64)
const photo = (sha256: string) =>
  ({
    point: '05',
    attempt: 1,
    caption: 'permit board',
    photo: photoBody('b', { sha256 }),
  }) as never

function repairFacts(names: Names): FactJson[] {
  const at = { point: '05' as never, attempt: 1 }
  const when = (time: string) => ({ observedAt: `2026-05-12T${time}:00+01:00` })
  return [
    factJson(
      repair,
      'recorded',
      { ...at, record: PERMIT as never },
      { id: names.record, ...when('08:00'), ...by('L1') },
    ),
    factJson(
      repair,
      'recorded',
      { ...at, record: PERMIT as never },
      { id: names.other, ...when('08:01'), ...by('L1') },
    ),
    factJson(
      repair,
      'recorded',
      {
        point: '06' as never,
        attempt: 1,
        record: { type: 'remark', text: 'read from the sheet' } as never,
        transcribed: { keeper: 'office', place: 'file 3' },
      },
      { id: names.copied, ...when('08:01'), ...by('NEW') },
    ),
    factJson(repair, 'photo-attached', photo(PHOTO_SHA256), { id: names.photo, ...when('08:02') }),
    factJson(repair, 'photo-attached', photo('d'.repeat(64)), { id: names.otherPhoto, ...when('08:02') }),
    factJson(repair, 'submitted', { ...at, heads: [] }, { ...when('08:05'), ...by('L1') }),
    factJson(
      repair,
      'released',
      { ...at, party: 'inspector', scope: { kind: 'whole' }, heads: [] },
      { id: names.release, ...when('08:10') },
    ),
    factJson(
      repair,
      'notice-sent',
      {
        point: '06' as never,
        to: PersonId.parse('K'),
        party: 'client',
        how: 'telephone',
        sentAt: '2026-05-11T07:50:00+01:00',
        for: '2026-05-12T10:00:00+01:00',
      },
      { id: names.notice, ...when('08:11') },
    ),
    factJson(
      repair,
      'query-raised',
      { number: 'TQ-1', question: 'May the taper be shorter?' },
      { id: names.query, ...when('08:12') },
    ),
    openedFact('R-2'),
    factJson(
      'repair:R-2',
      'accepted',
      {
        kind: 'accepted on condition',
        lifeYears: decimal('10'),
        lifeFrom: '2026-05-12',
        nextInspectionOn: '2027-05-12',
        restrictions: [],
        heads: [],
        conditions: [{ text: 'paint the ends', owner: PersonId.parse('L1'), dueOn: '2026-06-01' }],
      },
      { id: names.acceptance, ...when('08:20') },
    ),
    factJson(
      'dossier:R-1',
      'dossier-issued',
      {
        repair,
        revision: 0,
        purpose: 'for test',
        changes: [],
        sha256: 'e'.repeat(64) as never,
        sizeBytes: 10,
        pageCount: 1,
        asOf: '2026-05-12T08:30:00+01:00',
        factCount: 1,
        template: 't',
        rules: 'r',
        missing: [],
      },
      { id: names.issue, ...when('08:30') },
    ),
  ]
}

function storeFacts(names: Names): FactJson[] {
  return [
    factJson(
      'batch:FP-2',
      'batch-received',
      { number: 'FP-2', role: 'filler', product: 'Filler', expiresOn: '2026-04-30', quantity: null },
      { observedAt: '2026-05-02T08:00:00+01:00' },
    ),
    factJson(
      'batch:FP-2',
      'batch-quarantined',
      { reason: 'out of date' },
      { id: KNOWN_FACT_ID, observedAt: '2026-05-03T08:00:00+01:00' },
    ),
    factJson(
      'person:NEW',
      'person-registered',
      { name: 'Without account', party: 'crew', title: 'applicator' },
      { observedAt: '2026-05-02T08:00:00+01:00' },
    ),
    factJson(
      'project:P-1',
      'role-granted',
      { person: PersonId.parse('NEW'), role: 'technician', approve: false, from: '2026-05-02' },
      { id: names.grant, observedAt: '2026-05-02T08:00:00+01:00' },
    ),
    factJson('device:tab-1', 'device-registered', { title: 'Tablet 1' }, { observedAt: '2026-05-02T08:00:00+01:00' }),
    factJson(
      'specification:S-2',
      'specification-draft-saved',
      { body: SPECIFICATION },
      { observedAt: '2026-05-02T08:00:00+01:00' },
    ),
    factJson('plan:ITP-2', 'plan-draft-saved', { body: PLAN }, { observedAt: '2026-05-02T08:00:00+01:00' }),
  ]
}
