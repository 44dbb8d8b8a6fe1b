import type { FactId } from '@/lib/domain/facts/fact'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import type { Party, Role } from '@/lib/domain/roles'
import { at, covers, factMaker } from './fact-maker'
import { photoBody } from './photo-body'
import { dec, m, planBody, REPAIR, specificationBody } from './small-job-plan'
import { checklist, cleanliness, climate, hardness, permit, profile, tapeRoll, watch } from './small-job-records'

/** The small job with its specification, plan, instruments and persons; the tests add what happens. */
export function smallJob() {
  const { facts, make } = factMaker()
  make('specification:QP-SMALL', 'specification-issued', '04-20 09:00', {
    revision: 1,
    issuedOn: '2026-04-20',
    body: specificationBody(),
    changes: 'first',
    approvedBy: 'ravi',
  })
  make('plan:ITP-SMALL', 'plan-issued', '04-20 09:00', {
    revision: 1,
    issuedOn: '2026-04-20',
    body: planBody(),
    changes: 'first',
    approvedBy: 'ravi',
  })
  make('instrument:HD-03', 'instrument-registered', '04-01 09:00', {
    number: 'HD-03',
    kind: 'durometer',
    measures: ['ShoreD'],
  })
  make('instrument:HD-03', 'certificate-recorded', '04-01 09:00', {
    certificate: 'C-3291',
    calibratedOn: '2026-01-10',
    dueOn: '2026-11-30',
  })
  make(REPAIR, 'repair-opened', '05-11 09:00', {
    number: 'MD-0099',
    project: 'project:shaft-2',
    line: 'L-1',
    lineTitle: 'drain',
    specification: 'specification:QP-SMALL',
    plan: 'plan:ITP-SMALL',
    datum: 'valve V-21',
    stationFromDatum: dec('530'),
    clock: '3',
    clockView: 'downstream',
    geometry: 'straight',
    arrest: 'clamp',
    wrap: 'water-activated tape',
  })
  const record = (no: string, attempt: number, when: string, body: object, extra: Parameters<typeof make>[4] = {}) =>
    make(REPAIR, 'recorded', when, { point: no, attempt, record: body }, extra)
  const attach = (no: string, when: string, hash: string, more: object = {}) =>
    make(REPAIR, 'photo-attached', when, { point: no, attempt: 1, caption: 'band', photo: photoBody(hash), ...more })
  const submit = (no: string, when: string, attempt = 1) =>
    make(REPAIR, 'submitted', when, { point: no, attempt, heads: [] })
  const release = (
    no: string,
    when: string,
    party: Party = 'inspector',
    attempt = 1,
    scope: object = { kind: 'whole' },
  ) =>
    make(
      REPAIR,
      'released',
      when,
      { point: no, attempt, party, scope, heads: [] },
      { by: party === 'crew' ? 'maren' : party === 'client' ? 'ludmila' : 'tobias' },
    )
  const sign = (no: string, when: string, over: FactId[], meaning: string, role: Role, attempt = 1, by = 'tobias') =>
    make(
      REPAIR,
      'signed',
      when,
      {
        meaning,
        point: no,
        attempt,
        role,
        name: by,
        party: role === 'client' ? 'client' : role === 'inspector' ? 'inspector' : 'crew',
        covers: covers(...over),
        method: { kind: 'password' },
      },
      { by },
    )
  return { facts, make, record, attach, submit, release, sign }
}

export type SmallJob = ReturnType<typeof smallJob>

/** Points 02 to 09 recorded, submitted and released on 05-12 by 10:20. */
export function prepared(job: SmallJob): { clean: FactOf<'recorded'>; releases: Record<string, FactOf<'released'>> } {
  const { record, submit, release, sign } = job
  record('02', 1, '05-12 07:20', permit(), { by: 'maren' })
  submit('02', '05-12 07:21')
  const releases: Record<string, FactOf<'released'>> = { '02': release('02', '05-12 07:22', 'crew') }
  const clean = record('05', 1, '05-12 09:04', cleanliness())
  submit('05', '05-12 09:05')
  sign('05', '05-12 09:05', [clean.id], 'measured', 'inspector')
  releases['05'] = release('05', '05-12 09:08')
  record('06', 1, '05-12 09:15', profile())
  submit('06', '05-12 09:16')
  releases['06'] = release('06', '05-12 09:17')
  record('07', 1, '05-12 09:22', climate('05-12 09:22'))
  submit('07', '05-12 09:23')
  releases['07'] = release('07', '05-12 09:24', 'crew')
  record('09', 1, '05-12 09:58', watch('05-12 09:36', '05-12 09:58'))
  submit('09', '05-12 09:59')
  releases['09'] = release('09', '05-12 10:00')
  return { clean, releases }
}

/** The wrap and the hardness after it, released on 05-12 and 05-13; then the acceptance by inspector and client. */
export function wrapped(job: SmallJob): void {
  job.record('14', 1, '05-12 11:35', tapeRoll(), { by: 'maren' })
  job.submit('14', '05-12 11:40')
  job.release('14', '05-12 11:41')
  job.record('15', 1, '05-13 06:00', {
    type: 'cure',
    startedAt: at('05-12 11:35'),
    endedAt: at('05-13 06:00'),
    probes: [{ place: 'top', clock: '12', series: [{ at: at('05-12 12:00'), reading: m('18', 'degC') }] }],
    interrupted: 'no',
    postCure: 'no',
  })
  job.submit('15', '05-13 06:01')
  job.record('16', 1, '05-13 07:25', hardness('05-13 07:25'))
  job.submit('16', '05-13 07:30')
  job.release('16', '05-13 07:31')
}

export function accepted(job: SmallJob, kind = 'accepted', more: object = {}): FactOf<'accepted'> {
  job.record('19', 1, '05-13 11:00', checklist)
  job.submit('19', '05-13 11:05')
  return job.make(REPAIR, 'accepted', '05-13 11:20', {
    kind,
    lifeYears: dec('5'),
    lifeFrom: '2026-05-13',
    nextInspectionOn: '2027-05-14',
    restrictions: ['no welding'],
    conditions: [],
    heads: [],
    ...more,
  })
}
