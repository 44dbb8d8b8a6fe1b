/**
 * What the demo's story does not give and its record still needs, invented inside the limits: times between the given times, overlaps, notices,
 * filler heights before, as-built length and taper, ambient details, permits. Nothing here alters a given figure or time.
 */
export type Completion = {
  assessed: {
    day: string
    measuredAt: string
    designedAt: string
    closedAt: string
    diameters: [string, string]
    operating: string
    minTemp: string
    envelope: { hole: string; edge: string; from: string; to: string }
  }
  permit: {
    at: string
    closedAt: string
    no: string
    from: [string, string]
    to: [string, string]
    pressure: string
    gasTest: string
    sparks: 'yes' | 'no'
  }
  materials: { at: string; closedAt: string }
  instruments: { at: string; closedAt: string }
  prepared: [left: string, right: string]
  closed: {
    clean: string
    profile: string
    climate: string
    arrest: string
    watch: string
    mix: string
    placed: string
    thickness: string
    cure: string
    preWrap: string
  }
  plug: string
  filler: {
    mixEnded: string
    temp: string
    before: string
    covered: [length: string, girth: string]
    measuredAt: string
    hardAt: string
  }
  recheck: { air: string; humidity: string; steel: [string, string][] }
  notices: { day: string; clock: string }
}

export const COMPLETIONS: Record<'MD-0041' | 'MD-0042' | 'MD-0043' | 'MD-0044', Completion> = {
  'MD-0041': {
    assessed: {
      day: '05-10',
      measuredAt: '13:40',
      designedAt: '16:10',
      closedAt: '16:30',
      diameters: ['273.1', '273.0'],
      operating: '1.10',
      minTemp: '6',
      envelope: { hole: '8', edge: '5.0', from: '270.0', to: '276.0' },
    },
    permit: {
      at: '07:20',
      closedAt: '07:24',
      no: 'PTW-2-0412',
      from: ['05-12', '07:00'],
      to: ['05-13', '18:00'],
      pressure: '0.40',
      gasTest: 'GT-0512-1',
      sparks: 'no',
    },
    materials: { at: '07:48', closedAt: '07:53' },
    instruments: { at: '08:02', closedAt: '08:08' },
    prepared: ['205', '205'],
    closed: {
      clean: '09:08',
      profile: '09:19',
      climate: '09:25',
      arrest: '09:33',
      watch: '10:00',
      mix: '10:12',
      placed: '10:18',
      thickness: '11:32',
      cure: '11:33:30',
      preWrap: '11:37',
    },
    plug: 'hardwood plug, 3 to 7 mm over 40 mm, cut flush',
    filler: {
      mixEnded: '10:09',
      temp: '19.8',
      before: '0.2 0.1 0.3 / 0.1 −5.1 0.2 / 0.3 0.1 0.2',
      covered: ['120', '290'],
      measuredAt: '11:30',
      hardAt: '11:20',
    },
    recheck: { air: '20.8', humidity: '61', steel: [['6', '18.9']] },
    notices: { day: '05-10', clock: '17:00' },
  },
  'MD-0042': {
    assessed: {
      day: '05-17',
      measuredAt: '10:15',
      designedAt: '14:20',
      closedAt: '14:40',
      diameters: ['219.2', '219.1'],
      operating: '0.85',
      minTemp: '6',
      envelope: { hole: '9', edge: '4.5', from: '217.0', to: '222.0' },
    },
    permit: {
      at: '07:05',
      closedAt: '07:09',
      no: 'PTW-2-0431',
      from: ['05-19', '07:00'],
      to: ['05-22', '18:00'],
      pressure: '0.40',
      gasTest: 'GT-0519-1',
      sparks: 'no',
    },
    materials: { at: '07:20', closedAt: '07:25' },
    instruments: { at: '07:34', closedAt: '07:40' },
    prepared: ['190', '190'],
    closed: {
      clean: '08:45',
      profile: '08:56',
      climate: '09:03',
      arrest: '09:12',
      watch: '09:40',
      mix: '09:52',
      placed: '09:57',
      thickness: '11:08',
      cure: '11:09:30',
      preWrap: '11:13',
    },
    plug: 'hardwood plug, 4 to 9 mm over 40 mm, cut flush',
    filler: {
      mixEnded: '09:50',
      temp: '15.6',
      before: '0.1 0.2 0.2 / 0.3 −4.8 0.1 / 0.2 0.2 0.1',
      covered: ['140', '240'],
      measuredAt: '11:06',
      hardAt: '11:02',
    },
    recheck: {
      air: '16.0',
      humidity: '78',
      steel: [
        ['3', '16.4'],
        ['6', '15.4'],
      ],
    },
    notices: { day: '05-17', clock: '15:30' },
  },
  'MD-0043': {
    assessed: {
      day: '05-25',
      measuredAt: '11:10',
      designedAt: '15:00',
      closedAt: '15:20',
      diameters: ['324.0', '323.9'],
      operating: '0.70',
      minTemp: '6',
      envelope: { hole: '9', edge: '5.0', from: '321.0', to: '327.0' },
    },
    permit: {
      at: '07:25',
      closedAt: '07:29',
      no: 'PTW-2-0452',
      from: ['05-27', '07:00'],
      to: ['05-28', '18:00'],
      pressure: '0.35',
      gasTest: 'GT-0527-1',
      sparks: 'no',
    },
    materials: { at: '07:40', closedAt: '07:45' },
    instruments: { at: '07:55', closedAt: '08:01' },
    prepared: ['205', '205'],
    closed: {
      clean: '09:05',
      profile: '09:13',
      climate: '09:21',
      arrest: '09:42',
      watch: '10:11',
      mix: '10:27',
      placed: '10:33',
      thickness: '',
      cure: '',
      preWrap: '',
    },
    plug: 'hardwood plug, 4 to 8 mm over 40 mm, cut flush',
    filler: {
      mixEnded: '10:24',
      temp: '17.4',
      before: '0.2 0.1 0.2 / 0.1 −5.0 0.2 / 0.2 0.3 0.1',
      covered: ['110', '340'],
      measuredAt: '11:00',
      hardAt: '',
    },
    recheck: { air: '', humidity: '', steel: [] },
    notices: { day: '05-25', clock: '16:30' },
  },
  'MD-0044': {
    assessed: {
      day: '05-12',
      measuredAt: '15:10',
      designedAt: '16:40',
      closedAt: '16:55',
      diameters: ['114.3', '114.3'],
      operating: '0.45',
      minTemp: '6',
      envelope: { hole: '5', edge: '3.5', from: '113.0', to: '116.0' },
    },
    permit: {
      at: '07:10',
      closedAt: '07:14',
      no: 'PTW-2-0418',
      from: ['05-14', '07:00'],
      to: ['05-14', '18:00'],
      pressure: '0.30',
      gasTest: 'GT-0514-1',
      sparks: 'yes',
    },
    materials: { at: '07:25', closedAt: '07:30' },
    instruments: { at: '07:40', closedAt: '07:46' },
    prepared: ['170', '170'],
    closed: {
      clean: '08:39',
      profile: '08:53',
      climate: '08:55',
      arrest: '09:34:20',
      watch: '10:00',
      mix: '10:09',
      placed: '10:14',
      thickness: '11:19',
      cure: '11:20:30',
      preWrap: '11:26',
    },
    plug: '',
    filler: {
      mixEnded: '10:07',
      temp: '18.6',
      before: '0.1 0.2 0.1 / 0.2 0.3 0.1 / 0.2 0.1 0.2',
      covered: ['100', '180'],
      measuredAt: '11:18',
      hardAt: '11:16',
    },
    recheck: { air: '19.3', humidity: '62', steel: [['3', '18.5']] },
    notices: { day: '05-12', clock: '17:00' },
  },
}

/** Ply times, start and end, with overlap and offset in mm: the given end of the last ply and the given mixes bound them. */
export const PLIES = {
  'MD-0041': [
    ['M1', '11:42', '11:45', '25', '75'],
    ['M1', '11:45', '11:48', '26', '82'],
    ['M1', '11:48', '11:51', '25', '78'],
    ['M1', '11:51', '11:54', '27', '90'],
    ['M1', '11:54', '11:57', '25', '84'],
    ['M1', '11:57', '12:00', '26', '76'],
    ['M2', '12:01', '12:05', '25', '88'],
    ['M2', '12:05', '12:09', '26', '80'],
    ['M2', '12:09', '12:13', '25', '79'],
    ['M2', '12:13', '12:17', '27', '86'],
    ['M2', '12:17', '12:21', '25', '91'],
  ],
  'MD-0042': [
    ['M1', '11:20', '11:24', '25', '76'],
    ['M1', '11:24', '11:27', '25', '83'],
    ['M1', '11:27', '11:30', '26', '79'],
    ['M1', '11:30', '11:33', '25', '88'],
    ['M1', '11:33', '11:37', '27', '74'],
    ['M2', '11:38', '11:42', '25', '85'],
    ['M2', '11:42', '11:47', '26', '81'],
    ['M2', '11:47', '11:52', '25', '77'],
    ['M2', '11:52', '11:57', '25', '92'],
  ],
} as const

/** As built, mm: total length, taper left and right. */
export const AS_BUILT = {
  'MD-0041': ['356', '36', '35'],
  'MD-0042': ['327', '31', '30'],
  'MD-0044': ['304', '26', '25'],
} as const

/** Probe readings every hour from the start of the cure, °C; the last stands at its end. The least of each probe is the given one. */
export const CURE_SERIES = {
  'MD-0041 6': '18.9 18.7 18.5 18.4 18.2 18.0 17.9 17.7 17.6 17.4 17.3 17.2 17.1 17.0 16.9 16.9 16.8 16.8 16.9 17.0',
  'MD-0041 12': '20.6 20.5 20.3 20.1 19.9 19.7 19.5 19.3 19.2 19.0 18.9 18.8 18.7 18.6 18.5 18.4 18.4 18.3 18.4 18.6',
  'MD-0042 3': '18.6 18.5 18.4 18.3 18.1 18.0 17.9 17.8 17.7 17.6 17.5 17.4 17.3 17.2 17.2 17.1 17.1 17.2 17.3 17.3',
  'MD-0042 extended 3':
    '17.3 17.4 17.4 17.5 17.5 17.5 17.4 17.4 17.3 17.3 17.2 17.2 17.2 17.2 17.1 17.1 17.2 17.2 17.3 17.3 17.4 17.4 17.4 17.4 17.4',
  'MD-0042 extended 6':
    '12.9 12.9 13.0 13.1 13.1 13.2 13.2 13.1 13.1 13.0 13.0 13.0 12.9 12.9 12.9 12.9 12.9 13.0 13.0 13.1 13.1 13.2 13.2 13.2 13.2',
  'MD-0042 post-cure 6': '45.0 45.0 45.1 45.0 45.0 45.1 45.0 45.0 45.0',
  'MD-0044 3': '18.6 18.6 18.5 18.5',
} as const

/** Primer: when brushed, and its mass in g. */
export const PRIMER = {
  'MD-0041': { brushedAt: '11:39', mass: '180' },
  'MD-0042': { brushedAt: '11:15', mass: '140' },
  'MD-0043': { brushedAt: '12:55', mass: '20' },
} as const

/** Resin temperature of each mix where the story does not give it. */
export const RESIN_TEMPS = { 'MD-0041 M2': '20.4', 'MD-0042 M2': '15.8', 'MD-0043 M1': '17.8' } as const

/** Notices beyond those of the first day: point, day and clock sent, day and clock for which. The handover is to the client’s representative herself, by appointment. */
export const LATER_NOTICES = {
  'MD-0041': [
    ['16', '05-11', '17:00', '05-13', '07:25'],
    ['17', '05-11', '17:00', '05-13', '07:50'],
    ['18', '05-11', '17:00', '05-13', '09:30'],
    ['19', '05-11', '17:00', '05-13', '11:15'],
  ],
  'MD-0042': [
    ['16', '05-18', '17:00', '05-20', '08:10'],
    ['16', '05-20', '06:40', '05-21', '09:00'],
    ['16', '05-21', '06:20', '05-22', '08:30'],
    ['17', '05-21', '06:20', '05-22', '09:05'],
    ['19', '05-21', '13:20', '05-22', '16:00'],
  ],
  'MD-0043': [],
  'MD-0044': [
    ['16', '05-12', '17:02', '05-14', '14:10'],
    ['17', '05-12', '17:02', '05-14', '14:25'],
    ['18', '05-12', '17:02', '05-14', '15:00'],
    ['19', '05-12', '17:02', '05-14', '16:35'],
  ],
} as const

/** Expanded uncertainty (k = 2) on the certificates, where the demonstration states it. */
export const CERTIFICATE_UNCERTAINTY: Partial<Record<string, string>> = {
  'SP-07': '4',
  'HD-03': '1.0',
  'HD-05': '1.0',
  'UT-02': '0.1',
  'LG-06': '0.1',
  'PG-21': '0.002',
  'PG-22': '0.002',
  'ST-04': '0.2',
}
