import { at } from './fact-maker'
import { m } from './small-job-plan'

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
  tapeGross: 'no',
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
