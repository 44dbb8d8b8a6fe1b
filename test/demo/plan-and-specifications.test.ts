import { describe, expect, test } from 'vitest'
import { EVENTS, FLAGS, QUANTITIES } from '@/lib/domain/judge/quantity-names'
import { cycleOfBlocks, INVALIDATING_EVENTS } from '@/lib/domain/plan'
import type { Specification } from '@/lib/domain/specification'
import { planTemplate } from '@/lib/domain/templates/plan-template'
import { QP_MD_12_REV_3, QP_MD_12_REV_4, QP_MD_14_REV_1 } from '@/lib/server/demo/specifications'
import { ITP_MD_0042 } from '@/lib/server/demo/specifications-and-plans'

const CODES: Record<string, string> = {
  '01': 'RHRH',
  '02': 'HM--',
  '03': 'HWR-',
  '04': 'HH--',
  '05': 'HHW-',
  '06': 'HHR-',
  '07': 'HM--',
  '08': 'HM--',
  '09': 'HHW-',
  '10': 'HMR-',
  '11': 'HHR-',
  '12': 'HH--',
  '13': 'HHW-',
  '14': 'HHW-',
  '15': 'MR--',
  '16': 'HHW-',
  '17': 'HHWR',
  '18': 'HHHR',
  '19': 'HHHR',
  '20': '-RH-',
  '21': '----',
  '22': '-HRR',
}

describe.each(['wet lay-up', 'water-activated tape'] as const)('the plan of a repair by %s', (wrap) => {
  const plan = planTemplate(wrap)

  test('22 points in order with their participation, no cycle of blocks, every event in the table', () => {
    expect(
      Object.fromEntries(
        plan.points.map(({ no, participation: { crew, inspector, client, engineer } }) => [
          no,
          [crew, inspector, client, engineer].map((code) => code ?? '-').join(''),
        ]),
      ),
    ).toEqual(CODES)
    expect(cycleOfBlocks(plan)).toBeNull()
    expect(plan.invalidations.map((row) => row.event).sort()).toEqual([...INVALIDATING_EVENTS].sort())
  })

  test('a point blocks only later points, and every point to acceptance asks for a record, a signature and a photo', () => {
    for (const point of plan.points) {
      expect(point.blocks.every((no) => no > point.no)).toBe(true)
      expect(
        point.records.some((one) => one.atLeast > 0) && point.signatures.length > 0 && point.photos.length > 0,
      ).toBe(true)
    }
  })
})

test('the plan of MD-0042 makes the test a witness point of the client', () => {
  const point = ITP_MD_0042.points.find((one) => one.no === '18')
  expect(point?.participation.client).toBe('W')
  expect(point?.signatures.map((one) => one.role)).toEqual(['inspector'])
})

function ruleOf(specification: Specification, id: string) {
  return specification.criteria.find((one) => one.id === id)?.rule
}

describe('the specifications', () => {
  test.each([QP_MD_12_REV_3, QP_MD_12_REV_4, QP_MD_14_REV_1])(
    '$number cites only names that records yield',
    ({ criteria }) => {
      for (const { id, rule } of criteria) {
        if (rule.kind === 'each' || rule.kind === 'mean' || rule.kind === 'count')
          expect([id, rule.quantity in QUANTITIES]).toEqual([id, true])
        if (rule.kind === 'yes' || rule.kind === 'no') expect([id, rule.flag in FLAGS]).toEqual([id, true])
        if (rule.kind === 'window') expect([id, rule.start in EVENTS && rule.end in EVENTS]).toEqual([id, true])
      }
    },
  )

  test('revision 4 differs from revision 3 in the probe at the coldest clock position only', () => {
    const changed = QP_MD_12_REV_4.criteria.filter(
      (one) => JSON.stringify(one) !== JSON.stringify(QP_MD_12_REV_3.criteria.find((other) => other.id === one.id)),
    )
    expect(changed.map((one) => one.id)).toEqual(['15.hold'])
    expect(
      [ruleOf(QP_MD_12_REV_3, '15.hold'), ruleOf(QP_MD_12_REV_4, '15.hold')].map((rule) =>
        rule?.kind === 'cure-hold' ? rule.probeAtColdest : null,
      ),
    ).toEqual([false, true])
  })

  test('limits stand as the job states them', () => {
    expect(ruleOf(QP_MD_12_REV_3, '05.salts')).toMatchObject({
      max: { value: { digits: 25, scale: 0 }, unit: 'mg/m2' },
    })
    expect(ruleOf(QP_MD_12_REV_3, '06.profile')).toMatchObject({
      min: { value: { digits: 65 } },
      max: { value: { digits: 115 } },
    })
    expect(ruleOf(QP_MD_12_REV_3, '14.prep-window')).toMatchObject({ maxMinutes: { digits: 225, scale: 0 } })
    expect(ruleOf(QP_MD_12_REV_3, '16.each')).toMatchObject({ min: { value: { digits: 74 } } })
    expect(ruleOf(QP_MD_12_REV_3, '16.mean')).toMatchObject({ min: { value: { digits: 77 } } })
    expect(ruleOf(QP_MD_14_REV_1, '16.each')).toMatchObject({ min: { value: { digits: 72 } } })
    expect(ruleOf(QP_MD_14_REV_1, '16.mean')).toMatchObject({ min: { value: { digits: 75 } } })
    expect(ruleOf(QP_MD_12_REV_3, '18.drop')).toMatchObject({
      maxDrop: { digits: 20, scale: 3 },
      minMinutes: { digits: 75, scale: 0 },
    })
    expect(ruleOf(QP_MD_12_REV_3, '14.working-time')).toMatchObject({
      table: {
        kind: 'step',
        rows: [{ minutes: { digits: 31 } }, { minutes: { digits: 24 } }, { minutes: { digits: 17 } }],
      },
    })
    expect([
      QP_MD_12_REV_3.noticeHours.digits,
      QP_MD_12_REV_3.witnessWaitMinutes.digits,
      QP_MD_12_REV_3.extendedCuresAllowed,
    ]).toEqual([26, 40, 1])
  })
})
