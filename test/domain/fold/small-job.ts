import type { FactId } from '@/lib/domain/facts/fact'
import type { Fact, FactOf } from '@/lib/domain/facts/fact-kinds'
import { foldRepair } from '@/lib/domain/fold/fold-repair'
import type { FoldBeside } from '@/lib/domain/fold/repair-ground'
import type { AttemptState, PointState, RepairState } from '@/lib/domain/fold/repair-state'
import type { Party, Role } from '@/lib/domain/roles'
import { at, covers, factMaker, stream } from './fact-maker'

export const REPAIR = 'repair:MD-0099'
const limit = (text: string, unit: string) => ({ from: 'specification', value: dec(text), unit })
const dec = (text: string) => ({
  digits: Number(text.replace('.', '')),
  scale: text.includes('.') ? text.length - text.indexOf('.') - 1 : 0,
})
/** A measured value from text. */
export const m = (text: string, unit: string) => ({ kind: 'number', ...dec(text), unit, text })

/** The specification of the small job; one reading limit, one window and one grid are enough for the fold. */
export function specificationBody(hardnessMin = '74') {
  return {
    number: 'QP-SMALL',
    title: 'Small job',
    arrest: ['clamp'],
    wrap: 'water-activated tape',
    decisionRule: 'simple acceptance',
    dewPointFormula: 'Magnus',
    noticeHours: dec('26'),
    witnessWaitMinutes: dec('40'),
    lifeCountsFrom: 'acceptance',
    extendedCuresAllowed: 1,
    criteria: [
      {
        id: '05-1',
        point: '05',
        clause: '5.1',
        title: 'Salts, each',
        rule: { kind: 'each', quantity: 'salts', max: limit('25', 'mg/m2') },
      },
      {
        id: '06-1',
        point: '06',
        clause: '5.2',
        title: 'Profile, each',
        rule: { kind: 'each', quantity: 'profile', min: limit('65', 'um'), max: limit('115', 'um') },
      },
      {
        id: '07-1',
        point: '07',
        clause: '5.3',
        title: 'Steel above dew point',
        rule: { kind: 'each', quantity: 'dew-margin', min: limit('3.0', 'K') },
      },
      {
        id: '14-1',
        point: '14',
        clause: '6.1',
        title: 'Preparation to wrap',
        rule: {
          kind: 'window',
          start: 'prep-finished',
          end: 'first-wrap-resin',
          startPoint: '05',
          endPoint: '14',
          maxMinutes: dec('225'),
        },
      },
      {
        id: '16-1',
        point: '16',
        clause: '7.1',
        title: 'Hardness, each',
        rule: { kind: 'each', quantity: 'hardness', min: limit(hardnessMin, 'ShoreD') },
      },
      {
        id: '16-2',
        point: '16',
        clause: '7.2',
        title: 'Hardness, count',
        rule: { kind: 'count', quantity: 'hardness', atLeast: 4 },
      },
      { id: '16-3', point: '16', clause: '7.3', title: 'Instruments', rule: { kind: 'instruments-valid' } },
    ],
  }
}

type Codes = Partial<Record<Party, 'H' | 'W' | 'R' | 'M'>>
const point = (no: string, title: string, types: string[], codes: Codes, blocks: string[], more: object = {}) => ({
  no,
  title,
  records: types.map((type) => ({ type, atLeast: 1 })),
  participation: { crew: null, inspector: null, client: null, engineer: null, ...codes },
  signatures: [],
  blocks,
  photos: [],
  ...more,
})

export function planBody() {
  return {
    number: 'ITP-SMALL',
    title: 'Small plan',
    points: [
      point('02', 'Permit', ['permit'], { crew: 'H' }, ['05', '14']),
      point('05', 'Cleanliness', ['cleanliness'], { inspector: 'H' }, ['06', '07', '09', '14'], {
        signatures: [{ meaning: 'measured', role: 'inspector' }],
      }),
      point('06', 'Profile', ['profile'], { inspector: 'H' }, ['09', '14']),
      point('07', 'Climate', ['climate'], { crew: 'H' }, ['14']),
      point('09', 'Leak watch', ['arrest-watch'], { inspector: 'H', client: 'W' }, ['14']),
      point('14', 'Wrap', ['tape-roll'], { inspector: 'H' }, ['16']),
      point('15', 'Cure', ['cure'], { crew: 'M', inspector: 'R' }, []),
      point('16', 'Hardness', ['hardness'], { inspector: 'H' }, ['19']),
      point('19', 'Acceptance', ['checklist'], { inspector: 'H', client: 'H' }, ['20']),
      point('20', 'Handover', ['handover'], { client: 'H' }, []),
      point('21', 'In service', ['in-service'], {}, []),
      point('22', 'Removal', ['removal'], { inspector: 'H' }, []),
    ],
    invalidations: [
      { event: 'wet', falls: ['05', '06', '07', '09', '14'], redo: 'dry and prepare again' },
      { event: 'prep-lapsed', falls: ['05'], redo: 'prepare again' },
      { event: 'weep', falls: ['09'], redo: 'arrest again' },
      { event: 'weep', falls: ['14', '16'], redo: 'new attempt' },
      { event: 'touched', falls: ['05'], redo: 'local preparation' },
      { event: 'pressure-raised', falls: ['09', '14', '15'], redo: 'engineer' },
      { event: 'working-time-exceeded', falls: ['14'], redo: 'remove plies' },
      { event: 'cure-interrupted', falls: ['15', '16'], redo: 'full grid' },
      { event: 'damage', falls: ['16', '19'], redo: 'inspect' },
      { event: 'stopped', falls: ['02', '07'], redo: 'verify again' },
    ],
  }
}

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
  return { facts, make, record, submit, release, sign }
}
export type SmallJob = ReturnType<typeof smallJob>

export const permit = (to = '05-14 23:00') => ({
  type: 'permit',
  permitNo: 'P-1',
  validFrom: at('05-12 07:00'),
  validTo: at(to),
  areaAuthority: 'control room',
  state: 'live',
  pressureAtStart: m('0.40', 'MPa'),
  sparkRestricted: 'no',
})
export const cleanliness = (salts = ['11', '14', '9'], finished = '05-12 08:58') => ({
  type: 'cleanliness',
  grade: 'Sa 2½',
  method: 'blast',
  dustClass: m('1', 'class'),
  salts: salts.map((text, i) => ({ mark: `S${i + 1}`, reading: m(text, 'mg/m2') })),
  oilFree: 'yes',
  preparedLeft: m('150', 'mm'),
  preparedRight: m('150', 'mm'),
  finishedAt: at(finished),
  checkedAt: at('05-12 09:04'),
})
export const profile = (values = ['84', '88', '91']) => ({
  type: 'profile',
  method: 'replica tape',
  readings: values.map((text, i) => ({ mark: `P${i + 1}`, reading: m(text, 'um') })),
  instrument: 'instrument:SP-07',
  takenAt: at('05-12 09:15'),
})
export const climate = (taken: string, air = '19.4', humidity = '66', steel = '17.8') => ({
  type: 'climate',
  takenAt: at(taken),
  air: m(air, 'degC'),
  humidity: m(humidity, '%'),
  steel: [{ clock: '6', reading: m(steel, 'degC') }],
  instrument: 'instrument:TH-12',
  steelInstrument: 'instrument:ST-04',
})
export const watch = (from: string, to: string) => ({
  type: 'arrest-watch',
  startedAt: at(from),
  endedAt: at(to),
  pressure: m('0.40', 'MPa'),
  wipeDry: 'yes',
  freeOfFlashRust: 'yes',
  watchedBy: 'dorrit',
})
export const tapeRoll = (day = '05-12', soak = '11:32:05', end = '11:35') => ({
  type: 'tape-roll',
  rollNo: 1,
  batch: 'batch:WT-2206',
  sealedUntilUse: 'yes',
  soakStart: at(`${day} ${soak}`),
  soakSeconds: m('24', 's'),
  water: m('17', 'degC'),
  wrapStart: at(`${day} ${soak}`),
  wrapEnd: at(`${day} ${end}`),
  surface: m('18.6', 'degC'),
  wrappedBy: 'dorrit',
  tensionKept: 'yes',
  usedUp: 'yes',
  squeezed: 'yes',
  noGap: 'yes',
})
export const hardness = (taken: string, values = ['77', '78', '76', '77'], instrument = 'instrument:HD-03') => ({
  type: 'hardness',
  scale: 'ShoreD',
  grid: { stations: [{ name: 'A', fromLeak: m('-55', 'mm') }], clocks: ['3', '6', '9', '12'] },
  readings: values.map((text, i) => ({ mark: `A-${[3, 6, 9, 12][i] ?? i}`, reading: m(text, 'ShoreD') })),
  takenAt: at(taken),
  instrument,
})
export const checklist = {
  type: 'checklist',
  lines: [{ text: 'label fixed', answer: 'yes' }],
  labelFixed: 'yes',
  lifeYears: m('5', 'yr'),
  nextInspectionOn: '2027-05-14',
}

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

export function fold(facts: readonly Fact[], when: string, beside: FoldBeside = {}): RepairState {
  return foldRepair(facts, stream(REPAIR), at(when), beside)
}
export function pointOf(state: RepairState, no: string): PointState {
  const found = state.points.find((one) => one.no === no)
  if (!found) throw new Error(`no point ${no}`)
  return found
}
export function attemptOf(state: RepairState, no: string, attempt = 1): AttemptState {
  const found = pointOf(state, no).attempts.find((one) => one.attempt === attempt)
  if (!found) throw new Error(`no attempt ${attempt} at ${no}`)
  return found
}
export const stateAt = (job: SmallJob, when: string, no: string, attempt = 1) =>
  attemptOf(fold(job.facts, when), no, attempt).state
export const releaseOf = (state: RepairState, no: string, index = 0, attempt = 1) =>
  attemptOf(state, no, attempt).releases[index]
