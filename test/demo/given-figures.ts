/** The figures of the demo's story, row by row as given, with the repair that they belong to and the record type that must hold them. */
export type GivenRow = { of: string; type: string; figures: string }

export const GIVEN_ROWS: readonly GivenRow[] = [
  { of: 'MD-0041', type: 'defect', figures: '9.1 9.0 9.1 9.0 9.2 8.8 8.6 8.4 8.7 8.9 7.1 6.2 6.0 7.3 8.7 8.5 8.5 8.6 8.8 4 3 60' },
  { of: 'MD-0042', type: 'defect', figures: '7.9 8.0 7.8 7.9 8.0 7.4 7.1 6.9 7.2 7.5 6.3 5.4 5.2 6.1 7.3 7.2 7.0 7.1 7.4 7 5 85' },
  { of: 'MD-0043', type: 'defect', figures: '9.2 9.3 9.2 9.1 9.3 8.9 8.7 8.8 8.6 9.0 6.8 5.9 5.5 6.6 8.8 8.5 8.7 8.9 6 4 42' },
  { of: 'MD-0044', type: 'defect', figures: '5.8 5.7 5.8 5.7 5.9 4.6 4.1 4.0 4.7 5.2 5.1 5.0 5.1 5.3 5.7 5.8 5.7 5.6 5.8 359.0 359.2 3 2 30' },
  { of: 'MD-0041', type: 'design', figures: '273.0 9.3 1.35 24 11 6.8 112 35 354 1.485 10' },
  { of: 'MD-0042', type: 'design', figures: '219.1 8.2 1.10 24 9 5.5 90 30 325 1.210 10' },
  { of: 'MD-0043', type: 'design', figures: '323.9 9.5 0.90 24 12 7.4 115 40 352 10' },
  { of: 'MD-0044', type: 'design', figures: '114.3 6.0 0.60 22 8 3.2 110 25 300 0.660 5' },
  { of: 'MD-0041', type: 'cleanliness', figures: '11 14 9 2' }, { of: 'MD-0042', type: 'cleanliness', figures: '17 12 19 2' }, { of: 'MD-0043', type: 'cleanliness', figures: '21 16 18 1' }, { of: 'MD-0044', type: 'cleanliness', figures: '8 10 7 1' },
  { of: 'MD-0041', type: 'profile', figures: '84 88 91 79 86 93 82 87' }, { of: 'MD-0042', type: 'profile', figures: '76 81 74 83 79 85 72 80' }, { of: 'MD-0043', type: 'profile', figures: '90 86 95 88 92 84 97 89' }, { of: 'MD-0044', type: 'profile', figures: '72 78 69 75 81 74 70 77' },
  { of: 'MD-0041', type: 'climate', figures: '19.4 66 17.8 20.1 64 18.3 20.8 61 18.9' }, { of: 'MD-0042', type: 'climate', figures: '15.9 78 16.4 15.3 15.9 78 16.4 15.3' },
  { of: 'MD-0043', type: 'climate', figures: '17.6 74 16.9 18.2 81 16.8 18.0 86 16.5' }, { of: 'MD-0044', type: 'climate', figures: '18.9 63 18.1 19.2 62 18.4' },
  { of: 'MD-0041', type: 'filler-mix', figures: '640 243' }, { of: 'MD-0042', type: 'filler-mix', figures: '640 244' }, { of: 'MD-0043', type: 'filler-mix', figures: '640 243' }, { of: 'MD-0044', type: 'filler-mix', figures: '300 114' },
  { of: 'MD-0041', type: 'filler-thickness', figures: '-5.1 2.5' },
  { of: 'MD-0041', type: 'filler-cure', figures: '71 72 70' }, { of: 'MD-0042', type: 'filler-cure', figures: '69 68 70' }, { of: 'MD-0044', type: 'filler-cure', figures: '70 69 71' },
  { of: 'MD-0041', type: 'resin-mix', figures: '870 331 20.3 870 330' }, { of: 'MD-0042', type: 'resin-mix', figures: '760 289 15.8 760 288' }, { of: 'MD-0043', type: 'resin-mix', figures: '720 274' },
  { of: 'MD-0041', type: 'thickness', figures: '7.2 7.1 7.3 7.2 7.0 7.1 7.0 7.2 7.1 7.0 7.3 7.2 7.4 7.3 7.1 7.0 7.1 7.2 7.1 6.9' },
  { of: 'MD-0042', type: 'thickness', figures: '5.9 6.0 6.1 5.9 5.8 5.8 5.9 6.0 5.9 5.7 6.1 6.2 6.3 6.1 5.9 5.8 5.9 5.9 5.8 5.7' },
  { of: 'MD-0044', type: 'thickness', figures: '3.9 4.0 4.0 3.9 3.8 3.8 3.9 4.0 3.9 3.7 4.0 4.1 4.2 4.0 3.9 3.8 3.9 3.9 3.8 3.7' },
  { of: 'MD-0041', type: 'hardness', figures: '81 80 82 81 80 79 81 80 80 79 77 78 76 77 78 80 79 80 81 80' },
  { of: 'MD-0042', type: 'hardness', figures: '75 76 75 76 73 74 72 73 74 64 66 63 65 67 72 73 71 74 73 77 78 77 76 78 76 77 75 76 77 70 72 69 71 73 75 76 74 76 75 79 80 79 78 80 79 79 78 79 79 77 78 76 77 78 78 79 78 79 78 47' },
  { of: 'MD-0044', type: 'hardness', figures: '77 78 77 78 76 76 77 76 77 75 74 75 74 75 76 76 77 78 77 76' },
  { of: 'MD-0044', type: 'arrest', figures: '359.0 359.2 0.7 425 0.5 60 500 18.2 0.30' }, { of: 'MD-0044', type: 'tape-roll', figures: '24 17 26 17 18.6 18.6' }, { of: 'MD-0044', type: 'tape-wrap', figures: '152 152 32 32 32 32 75' },
  { of: 'MD-0041', type: 'pressure-test', figures: '1.492 1.490 1.489 1.489 16.8 16.8' }, { of: 'MD-0042', type: 'pressure-test', figures: '1.214 1.211 1.210 1.210 13.1 13.1' }, { of: 'MD-0044', type: 'pressure-test', figures: '0.668 0.667 0.667 0.666 18.4 18.4' },
  { of: 'MD-0041', type: 'cure', figures: '16.8' }, { of: 'MD-0042', type: 'cure', figures: '17.1 12.9 45.0' }, { of: 'MD-0041', type: 'visual', figures: '8' },
]

/** Times of the story by repair: record type, day and clock as they stand in a record of that type. */
export const GIVEN_TIMES: readonly [repair: string, type: string, day: string, clocks: string][] = [
  ['MD-0041', 'permit', '05-12', '07:20'], ['MD-0041', 'materials', '05-12', '07:48'], ['MD-0041', 'instruments', '05-12', '08:02'], ['MD-0041', 'cleanliness', '05-12', '08:58 09:04'], ['MD-0041', 'profile', '05-12', '09:15'],
  ['MD-0041', 'climate', '05-12', '09:22 10:20 11:36'], ['MD-0041', 'arrest', '05-12', '09:30'], ['MD-0041', 'arrest-watch', '05-12', '09:36 09:58'], ['MD-0041', 'filler-mix', '05-12', '10:05'],
  ['MD-0041', 'filler-thickness', '05-12', '10:16 11:30'], ['MD-0041', 'filler-cure', '05-12', '11:20'], ['MD-0041', 'pre-wrap', '05-12', '11:36'], ['MD-0041', 'resin-mix', '05-12', '11:40 12:00 11:57 12:19'], ['MD-0041', 'ply', '05-12', '12:21'],
  ['MD-0041', 'cure', '05-13', '07:10'], ['MD-0041', 'hardness', '05-13', '07:25'], ['MD-0041', 'thickness', '05-13', '07:50'], ['MD-0041', 'visual', '05-13', '08:05'], ['MD-0041', 'pressure-test', '05-13', '09:30 09:55 10:20 10:45'],
  ['MD-0042', 'cleanliness', '05-19', '08:30 08:41'], ['MD-0042', 'profile', '05-19', '08:52'], ['MD-0042', 'climate', '05-19', '09:00 10:55'], ['MD-0042', 'arrest', '05-19', '09:10'], ['MD-0042', 'arrest-watch', '05-19', '09:16 09:38'],
  ['MD-0042', 'filler-mix', '05-19', '09:46'], ['MD-0042', 'filler-thickness', '05-19', '09:55'], ['MD-0042', 'pre-wrap', '05-19', '11:12'], ['MD-0042', 'resin-mix', '05-19', '11:18 11:37 11:35 11:56'], ['MD-0042', 'ply', '05-19', '11:57'],
  ['MD-0042', 'cure', '05-20', '06:00'], ['MD-0042', 'hardness', '05-20', '08:10'], ['MD-0042', 'hardness', '05-21', '09:00'], ['MD-0042', 'cure', '05-21', '14:00 22:00'], ['MD-0042', 'hardness', '05-22', '08:30'], ['MD-0042', 'pressure-test', '05-22', '10:40 11:05 11:30 11:55'],
  ['MD-0043', 'instruments', '05-27', '07:55'], ['MD-0043', 'cleanliness', '05-27', '08:50 09:02'], ['MD-0043', 'profile', '05-27', '09:10'], ['MD-0043', 'climate', '05-27', '09:18 11:15 12:50'], ['MD-0043', 'arrest', '05-27', '09:40'],
  ['MD-0043', 'arrest-watch', '05-27', '09:47 10:09 11:52 12:14 12:06'], ['MD-0043', 'filler-mix', '05-27', '10:20'], ['MD-0043', 'filler-thickness', '05-27', '10:31'], ['MD-0043', 'weep', '05-27', '11:05'], ['MD-0043', 'resin-mix', '05-27', '12:52'], ['MD-0043', 'primer', '05-27', '12:55'],
  ['MD-0044', 'cleanliness', '05-14', '08:30 08:36'], ['MD-0044', 'climate', '05-14', '08:40 10:30'], ['MD-0044', 'arrest', '05-14', '09:02:10 09:05:30 09:06 09:08 09:34'], ['MD-0044', 'arrest-watch', '05-14', '09:36 09:58'], ['MD-0044', 'filler-mix', '05-14', '10:04'],
  ['MD-0044', 'filler-thickness', '05-14', '10:12'], ['MD-0044', 'filler-cure', '05-14', '11:16'], ['MD-0044', 'tape-roll', '05-14', '11:32:05 11:32:40 11:35:00 11:35:40 11:36:15 11:38:25'], ['MD-0044', 'hardness', '05-14', '14:10'], ['MD-0044', 'pressure-test', '05-14', '15:00 15:25 15:50 16:15'],
]
