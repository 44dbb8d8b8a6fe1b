/** The given figures of one repair, as text exactly as read. `clocks` are the filler's three clock positions. */
export type RepairFigures = {
  number: string
  specification: string
  plan: string
  wrap: 'wet lay-up' | 'water-activated tape'
  arrest: string
  line: string
  lineTitle: string
  datum: string
  stationFromDatum: string
  clock: string
  day: string
  diameter: string
  wall: string
  designPressure: string
  maxTemp: string
  hole: [axial: string, hoop: string]
  defectLength: string
  plies: string
  minThickness: string
  overlap: string
  taper: string
  totalLength: string
  testPressure: string
  stations: string
  lifeYears: string
  firstInspection: string
  wallGrid: Record<string, string>
  surface: {
    prepDone: string
    cleanAt: string
    profileAt: string
    salts: string
    dust: string
    profile: string
    grade: string
    method: 'blast' | 'power tool' | 'hand tool'
  }
  filler: {
    batch: string
    partA: string
    partB: string
    mixedAt: string
    placedAt: string
    clocks: [string, string, string]
    thickness: string
  }
}

/** A climate reading as given: steel by clock position. */
export type ClimateFigures = { at: string; air: string; humidity: string; steel: [clock: string, temp: string][] }

export const MD_0041: RepairFigures = {
  number: 'MD-0041',
  specification: 'specification:QP-MD-12',
  plan: 'plan:ITP-MD-12',
  wrap: 'wet lay-up',
  arrest: 'tapered plug',
  line: 'MDW-250-RM2-0310',
  lineTitle: 'rising main',
  datum: 'weld W-17',
  stationFromDatum: '1240',
  clock: '6',
  day: '05-12',
  diameter: '273.0',
  wall: '9.3',
  designPressure: '1.35',
  maxTemp: '24',
  hole: ['4', '3'],
  defectLength: '60',
  plies: '11',
  minThickness: '6.8',
  overlap: '112',
  taper: '35',
  totalLength: '354',
  testPressure: '1.485',
  stations: '−130 −65 0 65 130',
  lifeYears: '10',
  firstInspection: '2027-05-13',
  wallGrid: {
    '12': '9.1 9.0 9.1 9.0 9.2',
    '3': '8.8 8.6 8.4 8.7 8.9',
    '6': '7.1 6.2 TW 6.0 7.3',
    '9': '8.7 8.5 8.5 8.6 8.8',
  },
  surface: {
    prepDone: '08:58',
    cleanAt: '09:04',
    profileAt: '09:15',
    salts: '11 14 9',
    dust: '2',
    profile: '84 88 91 79 86 93 82 87',
    grade: 'Sa 2½',
    method: 'blast',
  },
  filler: {
    batch: 'FP-118',
    partA: '640',
    partB: '243',
    mixedAt: '10:05',
    placedAt: '10:16',
    clocks: ['5', '6', '7'],
    thickness: '3.9 4.2 3.6 / 4.4 7.6 4.1 / 3.7 4.3 3.8',
  },
}

export const MD_0042: RepairFigures = {
  number: 'MD-0042',
  specification: 'specification:QP-MD-12',
  plan: 'plan:ITP-MD-0042',
  wrap: 'wet lay-up',
  arrest: 'tapered plug',
  line: 'MDW-200-HD1-0127',
  lineTitle: 'header',
  datum: 'flange F-3',
  stationFromDatum: '860',
  clock: '6',
  day: '05-19',
  diameter: '219.1',
  wall: '8.2',
  designPressure: '1.10',
  maxTemp: '24',
  hole: ['7', '5'],
  defectLength: '85',
  plies: '9',
  minThickness: '5.5',
  overlap: '90',
  taper: '30',
  totalLength: '325',
  testPressure: '1.210',
  stations: '−120 −60 0 60 120',
  lifeYears: '10',
  firstInspection: '2027-05-22',
  wallGrid: {
    '12': '7.9 8.0 7.8 7.9 8.0',
    '3': '7.4 7.1 6.9 7.2 7.5',
    '6': '6.3 5.4 TW 5.2 6.1',
    '9': '7.3 7.2 7.0 7.1 7.4',
  },
  surface: {
    prepDone: '08:30',
    cleanAt: '08:41',
    profileAt: '08:52',
    salts: '17 12 19',
    dust: '2',
    profile: '76 81 74 83 79 85 72 80',
    grade: 'Sa 2½',
    method: 'blast',
  },
  filler: {
    batch: 'FP-121',
    partA: '640',
    partB: '244',
    mixedAt: '09:46',
    placedAt: '09:55',
    clocks: ['5', '6', '7'],
    thickness: '3.4 3.8 3.5 / 4.0 7.3 3.9 / 3.3 3.7 3.6',
  },
}

export const MD_0043: RepairFigures = {
  number: 'MD-0043',
  specification: 'specification:QP-MD-12',
  plan: 'plan:ITP-MD-12',
  wrap: 'wet lay-up',
  arrest: 'tapered plug',
  line: 'MDW-300-SH4-0088',
  lineTitle: 'gallery main',
  datum: 'support P-9',
  stationFromDatum: '−415',
  clock: '6',
  day: '05-27',
  diameter: '323.9',
  wall: '9.5',
  designPressure: '0.90',
  maxTemp: '24',
  hole: ['6', '4'],
  defectLength: '42',
  plies: '12',
  minThickness: '7.4',
  overlap: '115',
  taper: '40',
  totalLength: '352',
  testPressure: '0.990',
  stations: '−130 −65 0 65 130',
  lifeYears: '10',
  firstInspection: '2027-05-28',
  wallGrid: {
    '12': '9.2 9.3 9.2 9.1 9.3',
    '3': '8.9 8.7 8.8 8.6 9.0',
    '6': '6.8 5.9 TW 5.5 6.6',
    '9': '8.8 NA 8.5 8.7 8.9',
  },
  surface: {
    prepDone: '08:50',
    cleanAt: '09:02',
    profileAt: '09:10',
    salts: '21 16 18',
    dust: '1',
    profile: '90 86 95 88 92 84 97 89',
    grade: 'Sa 2½',
    method: 'blast',
  },
  filler: {
    batch: 'FP-118',
    partA: '640',
    partB: '243',
    mixedAt: '10:20',
    placedAt: '10:31',
    clocks: ['5', '6', '7'],
    thickness: '3.6 4.1 3.7 / 4.2 7.4 4.0 / – – –',
  },
}

export const MD_0044: RepairFigures = {
  number: 'MD-0044',
  specification: 'specification:QP-MD-14',
  plan: 'plan:ITP-MD-14',
  wrap: 'water-activated tape',
  arrest: 'plug, plate and band',
  line: 'MDW-100-DR5-0212',
  lineTitle: 'drain',
  datum: 'valve V-21',
  stationFromDatum: '530',
  clock: '3',
  day: '05-14',
  diameter: '114.3',
  wall: '6.0',
  designPressure: '0.60',
  maxTemp: '22',
  hole: ['3', '2'],
  defectLength: '30',
  plies: '8',
  minThickness: '3.2',
  overlap: '110',
  taper: '25',
  totalLength: '300',
  testPressure: '0.660',
  stations: '−110 −55 0 55 110',
  lifeYears: '5',
  firstInspection: '2027-05-14',
  wallGrid: {
    '12': '5.8 5.7 5.8 5.7 5.9',
    '3': '4.6 4.1 TW 4.0 4.7',
    '6': '5.2 5.1 5.0 5.1 5.3',
    '9': '5.7 5.8 5.7 5.6 5.8',
  },
  surface: {
    prepDone: '08:30',
    cleanAt: '08:36',
    profileAt: '08:50',
    salts: '8 10 7',
    dust: '1',
    profile: '72 78 69 75 81 74 70 77',
    grade: 'St 3',
    method: 'power tool',
  },
  filler: {
    batch: 'FP-118',
    partA: '300',
    partB: '114',
    mixedAt: '10:04',
    placedAt: '10:12',
    clocks: ['2', '3', '4'],
    thickness: '3.5 3.8 3.4 / 3.9 7.4 3.7 / 3.3 3.6 3.5',
  },
}

/** Laminate grids as given, by repair. */
export const THICKNESS = {
  'MD-0041': {
    '12': '7.2 7.1 7.3 7.2 7.0',
    '3': '7.1 7.0 7.2 7.1 7.0',
    '6': '7.3 7.2 7.4 7.3 7.1',
    '9': '7.0 7.1 7.2 7.1 6.9',
  },
  'MD-0042': {
    '12': '5.9 6.0 6.1 5.9 5.8',
    '3': '5.8 5.9 6.0 5.9 5.7',
    '6': '6.1 6.2 6.3 6.1 5.9',
    '9': '5.8 5.9 5.9 5.8 5.7',
  },
  'MD-0044': {
    '12': '3.9 4.0 4.0 3.9 3.8',
    '3': '3.8 3.9 4.0 3.9 3.7',
    '6': '4.0 4.1 4.2 4.0 3.9',
    '9': '3.8 3.9 3.9 3.8 3.7',
  },
} as const

export const HARDNESS = {
  'MD-0041': { '12': '81 80 82 81 80', '3': '79 81 80 80 79', '6': '77 78 76 77 78', '9': '80 79 80 81 80' },
  'MD-0042 T1': { '12': '75 76 74 75 76', '3': '73 74 72 73 74', '6': '64 66 63 65 67', '9': '72 73 71 74 73' },
  'MD-0042 T2': { '12': '77 78 77 76 78', '3': '76 77 75 76 77', '6': '70 72 69 71 73', '9': '75 76 74 76 75' },
  'MD-0042 T3': { '12': '79 80 79 78 80', '3': '79 79 78 79 79', '6': '77 78 76 77 78', '9': '78 79 78 79 78' },
  'MD-0044': { '12': '77 78 77 78 76', '3': '76 77 76 77 75', '6': '74 75 74 75 76', '9': '76 77 78 77 76' },
} as const
