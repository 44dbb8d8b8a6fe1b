import { decimal } from '@/lib/domain/decimal'
import { PersonId, type StreamId } from '@/lib/domain/facts/fact'
import { Plan } from '@/lib/domain/plan'
import { ROLES, type Role } from '@/lib/domain/roles'
import { Specification } from '@/lib/domain/specification'
import { type FactJson, factJson } from '@/test/store/facts-for-tests'
import { measured } from '@/test/store/measured-for-tests'

export const PERSON_OF_ROLE: Record<Role, string> = {
  technician: 'T1',
  lead: 'L1',
  inspector: 'QI',
  client: 'K',
  engineer: 'E',
  stores: 'S',
  auditor: 'AU',
  'in-service inspector': 'IS',
  administrator: 'AD',
}
/** A second inspector, who may approve; a client without an account. */
export const MORE: [string, Role, boolean][] = [
  ['QJ', 'inspector', true],
  ['KP', 'client', false],
]
/** A plan of three points, two of them held by two parties. */
export const PLAN = Plan.parse({
  number: 'ITP-T',
  title: 'A short plan',
  invalidations: [],
  points: [
    {
      no: '05',
      title: 'Permit looked at',
      records: [{ type: 'permit', atLeast: 1 }],
      participation: { crew: 'H', inspector: 'H', client: 'W', engineer: null },
      signatures: [],
      blocks: ['06'],
      photos: [],
    },
    {
      no: '06',
      title: 'Surface seen',
      records: [{ type: 'remark', atLeast: 1 }],
      participation: { crew: null, inspector: 'H', client: 'H', engineer: null },
      signatures: [],
      blocks: ['19'],
      photos: [],
    },
    {
      no: '19',
      title: 'Final acceptance',
      records: [{ type: 'checklist', atLeast: 1 }],
      participation: { crew: null, inspector: 'H', client: null, engineer: null },
      signatures: [],
      blocks: [],
      photos: [],
    },
  ],
})
export const SPECIFICATION = Specification.parse({
  number: 'S-1',
  title: 'Wet lay-up',
  arrest: ['tapered plug'],
  wrap: 'wet lay-up',
  decisionRule: 'simple acceptance',
  dewPointFormula: 'Magnus',
  noticeHours: decimal('26'),
  witnessWaitMinutes: decimal('40'),
  lifeCountsFrom: 'acceptance',
  extendedCuresAllowed: 1,
  tapRule: 'mean',
  notes: [],
  criteria: [
    {
      id: 'F-1',
      point: '10',
      clause: '7.1',
      title: 'Filler ratio',
      rule: { kind: 'ratio', partBPer100: decimal('38'), tolerance: decimal('1.5') },
    },
  ],
})

export const EARLY = { observedAt: '2026-05-01T08:00:00+01:00' }

function personFacts(): FactJson[] {
  const held: [string, Role, boolean][] = [
    ...ROLES.map((role): [string, Role, boolean] => [PERSON_OF_ROLE[role], role, false]),
    ...MORE,
  ]
  return held.flatMap(([person, role, approve]) => [
    factJson(`person:${person}`, 'person-registered', { name: `Person ${person}`, party: 'crew', title: role }, EARLY),
    factJson(
      'project:P-1',
      'role-granted',
      { person: PersonId.parse(person), role, approve, from: '2026-05-01' },
      EARLY,
    ),
  ])
}

/** The opening fact of a repair in project P-1. */
export function openedFact(number: string): FactJson {
  return factJson(
    `repair:${number}`,
    'repair-opened',
    {
      number,
      project: 'project:P-1' as StreamId,
      line: 'MDW-250',
      lineTitle: 'Rising main',
      specification: 'specification:S-1' as StreamId,
      plan: 'plan:ITP-T' as StreamId,
      datum: 'weld W-17',
      stationFromDatum: decimal('1240'),
      clock: '6',
      clockView: 'looking downstream',
      geometry: 'straight',
      arrest: 'tapered plug',
      wrap: 'wet lay-up',
    },
    { observedAt: '2026-05-11T08:00:00+01:00' },
  )
}

/** The facts that every test of commands starts from: a project with one person a role, an issued plan and specification, a repair, a batch, an instrument. */
export function groundFacts(): FactJson[] {
  const issued = { revision: 1, issuedOn: '2026-04-20', changes: 'first issue', approvedBy: PersonId.parse('E') }
  return [
    factJson(
      'project:P-1',
      'project-opened',
      { name: 'Dewatering', site: 'Shaft 2', utcOffset: '+01:00', owner: 'Quellmark' },
      EARLY,
    ),
    ...personFacts(),
    factJson('specification:S-1', 'specification-issued', { ...issued, body: SPECIFICATION }, EARLY),
    factJson('plan:ITP-T', 'plan-issued', { ...issued, body: PLAN }, EARLY),
    factJson(
      'batch:FP-1',
      'batch-received',
      {
        number: 'FP-1',
        role: 'filler',
        product: 'Filler',
        expiresOn: '2026-09-30',
        quantity: measured('6', 'kits') as never,
      },
      EARLY,
    ),
    factJson(
      'instrument:HD-1',
      'instrument-registered',
      { number: 'HD-1', kind: 'durometer', measures: ['ShoreD'] },
      EARLY,
    ),
    openedFact('R-1'),
  ]
}

/** A record of a permit, as point 05 of the short plan asks for. */
export const PERMIT = {
  type: 'permit',
  permitNo: 'P-77',
  validFrom: '2026-05-12T07:00:00+01:00',
  validTo: '2026-05-12T19:00:00+01:00',
  areaAuthority: 'Area hut 2',
  state: 'isolated',
  pressureAtStart: { kind: 'number', digits: 40, scale: 2, unit: 'MPa', text: '0.40' },
  sparkRestricted: 'no',
} as const

/** A signature as drawn. */
export const DRAWING = {
  v: 1 as const,
  strokes: [
    [
      [20, 120],
      [200, 40],
      [400, 150],
    ],
  ] as [number, number][][],
}
