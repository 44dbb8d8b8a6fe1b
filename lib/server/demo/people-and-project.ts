import { DEMO_DEVICES } from './demo-devices'
import { ADMIN, DEMO_PEOPLE, L1, QI, QJ, S, T1, T2 } from './demo-people'
import { at } from './demo-time'
import type { BodyInput, FactScript } from './fact-script'

/** The project's stream. */
export const DEMO_PROJECT = 'project:QDM-SHAFT-2'

const PARTIES: [BodyInput<'party-named'>['party'], string][] = [
  ['owner', 'Quellmark Deep Mine Cooperative'],
  ['crew', 'Wherryfold & Daughter Pipe Mending'],
  ['inspection body', 'Plumbline-and-Thrice Inspection'],
  ['engineer', 'Oddquay Calculation House'],
  ['area authority', 'Shaft 2 control, Quellmark Deep Mine Cooperative'],
]

type Qualification = {
  person: string
  number: string
  task: BodyInput<'qualification-recorded'>['task']
  geometries: ('straight' | 'bend')[]
  validTo: string
}
/** Qualifications as the store held them in April: T2's year was keyed wrong from the certificate, 2027 for 2026. */
const QUALIFICATIONS: Qualification[] = [
  { person: T1, number: 'Q-118', task: 'applicator', geometries: ['straight', 'bend'], validTo: '2027-09-30' },
  { person: T2, number: 'Q-131', task: 'applicator', geometries: ['straight'], validTo: '2027-05-18' },
  { person: L1, number: 'Q-064', task: 'supervisor', geometries: ['straight', 'bend'], validTo: '2027-02-28' },
  { person: QI, number: 'I-022', task: 'inspector', geometries: ['straight', 'bend'], validTo: '2026-12-31' },
  { person: QJ, number: 'I-029', task: 'inspector', geometries: ['straight', 'bend'], validTo: '2027-06-30' },
]

/** People, the project with its parties and roles, and the devices. */
export function scriptPeopleAndProject(script: FactScript): void {
  scriptPeople(script)
  const opened = at('04-16', '09:00')
  script.write({
    stream: DEMO_PROJECT,
    kind: 'project-opened',
    at: opened,
    by: QJ,
    body: {
      name: 'Dewatering lines, Shaft 2',
      site: 'Shaft 2 pump chamber and gallery',
      utcOffset: '+01:00',
      owner: 'Quellmark Deep Mine Cooperative',
    },
  })
  for (const [party, name] of PARTIES)
    script.write({ stream: DEMO_PROJECT, kind: 'party-named', at: at('04-16', '09:05'), by: QJ, body: { party, name } })
  for (const { id, role, approve } of DEMO_PEOPLE) {
    script.write({
      stream: DEMO_PROJECT,
      kind: 'role-granted',
      at: at('04-16', '09:20'),
      by: id === ADMIN ? QJ : ADMIN,
      body: { person: id, role, approve, from: '2026-04-16' },
    })
  }
  for (const [id, { title, holder }] of Object.entries(DEMO_DEVICES)) {
    script.write({
      stream: `device:${id}`,
      kind: 'device-registered',
      at: at('04-17', '08:00'),
      by: holder,
      body: { title, holder },
    })
    script.write({
      stream: `device:${id}`,
      kind: 'clock-checked',
      at: at('05-10', '07:00'),
      by: holder,
      body: { offsetMs: 0 },
    })
  }
}

function scriptPeople(script: FactScript): void {
  for (const { id, name, belongsTo, title } of DEMO_PEOPLE) {
    script.write({
      stream: `person:${id}`,
      kind: 'person-registered',
      at: at('04-15', '10:00'),
      by: ADMIN,
      body: { name, party: belongsTo, title },
    })
  }
  for (const { person, ...qualification } of QUALIFICATIONS) {
    script.write({
      stream: `person:${person}`,
      kind: 'qualification-recorded',
      at: at('04-17', '11:00'),
      by: S,
      body: qualification,
    })
  }
}
