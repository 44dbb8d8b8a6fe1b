import type { Party } from '@/lib/domain/roles'

export const REPAIR = 'repair:MD-0099'

const limit = (text: string, unit: string) => ({ from: 'specification', value: dec(text), unit })

export const dec = (text: string) => ({
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

export const point = (
  no: string,
  title: string,
  types: string[],
  codes: Codes,
  blocks: string[],
  more: object = {},
) => ({
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
