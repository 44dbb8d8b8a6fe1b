import { decimal } from '@/lib/domain/decimal'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { measured } from '@/lib/domain/reading'
import type { RecordOf } from '@/lib/domain/records/record'
import { arrestPoints } from './arrest-by-hand'
import { defect, design } from './design-by-hand'
import { attempt, criterion, fact, GRID, grid, marks, no, pid, point, record, sid } from './facts-by-hand'

const moment = (text: string): string => `2026-${text.replace(' ', 'T')}:00+01:00`

const each = {
  kind: 'each',
  quantity: 'hardness',
  min: { from: 'specification', value: decimal('74'), unit: 'ShoreD' },
} as const
const hardness = (rows: string, at: string): RecordOf<'hardness'> => ({
  type: 'hardness',
  scale: 'ShoreD',
  grid: GRID,
  readings: grid(rows, 'ShoreD'),
  takenAt: moment(at),
  instrument: sid('instrument:HD-03'),
})
const low = ['A', 'B', 'C', 'D', 'E'].map((station) => ({ mark: `${station}-6`, found: '70', limit: '≥ 74 Shore D' }))

/** The opening fact of the repair by hand. */
export const opened = fact('repair-opened', '05-10 08:00', 'qi', {
  number: 'T-1',
  project: sid('project:P-1'),
  line: 'LN-200-A',
  lineTitle: 'header',
  specification: sid('specification:QP-T'),
  plan: sid('plan:IT-T'),
  datum: 'flange F-3',
  stationFromDatum: decimal('860'),
  clock: '6',
  clockView: 'looking downstream',
  geometry: 'straight',
  arrest: 'tapered plug',
  wrap: 'wet lay-up',
})

/** A repair with a failed hardness beside its rework, written by hand. */
export function repairByHand(): RepairState {
  const defectRecord = record('01', 1, '05-11 09:00', 'qi', defect)
  const fillerRecord = record('11', 1, '05-19 09:55', 'qi', {
    type: 'filler-thickness',
    mixNo: 'F1',
    placedAt: moment('05-19 09:55'),
    placedBy: pid('t1'),
    holeMark: '0@6',
    measuredAt: moment('05-19 10:31'),
    smooth: 'yes',
    instrument: sid('instrument:LG-06'),
    before: marks(
      '-25@5 0.0, -25@6 -2.1, -25@7 0.0, 0@5 -0.4, 0@6 -4.8, 0@7 -0.3, +25@5 0.0, +25@6 -2.0, +25@7 0.0',
      'mm',
    ),
    after: marks('-25@5 3.4, -25@6 2.4, -25@7 3.5, 0@5 3.6, 0@6 2.5, 0@7 3.6, +25@5 3.3, +25@6 2.5, +25@7 3.6', 'mm'),
  })
  const firstHardness = record(
    '16',
    1,
    '05-21 09:00',
    'qi',
    hardness('77 78 77 76 78|76 77 75 76 77|70 72 69 71 73|75 76 74 76 75', '05-21 09:00'),
    { enteredAt: '05-21 14:00', late: { reason: 'tablet battery empty', source: 'paper tally' } },
  )
  firstHardness.corrections.push(
    fact('corrected', '05-21 15:00', 'qi', {
      target: firstHardness.fact.id,
      changes: [{ path: ['readings', 2, 'reading'], from: measured('47', 'ShoreD'), to: measured('77', 'ShoreD') }],
      reason: 'digits swapped, photo shows 77',
    }),
  )
  const points = [
    point('01', 'Defect and design', [
      attempt(
        '01',
        1,
        'released',
        [defectRecord, record('01', 1, '05-11 15:00', 'en', design)],
        [
          criterion(
            '01',
            'As found within the design envelope',
            { kind: 'design-envelope' },
            'inside',
            'inside',
            'pass',
          ),
        ],
      ),
    ]),
    ...arrestPoints(),
    point('11', 'Filler at marked points', [attempt('11', 1, 'released', [fillerRecord], [])]),
    point('14', 'Wrap', [
      attempt(
        '14',
        1,
        'in question',
        [
          record('14', 1, '05-19 11:57', 'l1', {
            type: 'ply-count',
            plies: measured('9', 'plies'),
            countedBy: pid('l1'),
            countedAt: moment('05-19 11:57'),
          }),
        ],
        [],
      ),
    ]),
    point('16', 'Hardness', [
      attempt(
        '16',
        1,
        'superseded',
        [firstHardness],
        [criterion('16', 'Hardness at each mark', each, 'each ≥ 74 Shore D', '69 lowest', 'fail', low)],
      ),
      attempt(
        '16',
        2,
        'released',
        [
          record(
            '16',
            2,
            '05-22 08:30',
            'qi',
            hardness('79 80 79 78 80|79 79 78 79 79|77 78 76 77 78|78 79 78 79 78', '05-22 08:30'),
          ),
        ],
        [criterion('16', 'Hardness at each mark', each, 'each ≥ 74 Shore D', '76 lowest', 'pass')],
      ),
    ]),
    point('17', 'Visual, tap, dimensions', [
      attempt(
        '17',
        1,
        'released',
        [
          record('17', 1, '05-22 09:20', 'qi', {
            type: 'thickness',
            grid: GRID,
            readings: grid('5.9 6.0 6.1 5.9 5.8|5.8 5.9 6.0 5.9 5.7|6.1 6.2 6.3 6.1 5.9|5.8 5.9 5.9 5.8 5.7', 'mm'),
            takenAt: moment('05-22 09:20'),
            instrument: sid('instrument:LG-06'),
          }),
        ],
        [],
      ),
    ]),
    point('19', 'Final acceptance', [
      attempt('19', 1, 'open', [], [], { missing: ['The checklist is not recorded.'] }),
    ]),
  ]
  return {
    rules: 'rules-1',
    asOf: moment('05-29 08:00'),
    stream: sid('repair:T-1'),
    number: 'T-1',
    opened,
    specification: null,
    specificationRevisions: [],
    plan: null,
    planRevisions: [],
    design,
    defect,
    points,
    windows: [],
    nonconformances: [],
    acceptance: null,
    status: 'in progress',
    revisionDue: false,
    issues: [],
    uses: [],
    missing: [{ point: no('19'), text: 'Final acceptance has no record.' }],
    conflicts: [],
    notices: [],
    waivers: [],
    queries: [],
    remarkable: [
      {
        at: moment('05-21 14:00'),
        fact: firstHardness.fact.id,
        about: 'late entry',
        text: 'Hardness of 05-21 entered late from a paper tally.',
      },
    ],
  }
}
