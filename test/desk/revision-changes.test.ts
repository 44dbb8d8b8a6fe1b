import { describe, expect, test } from 'vitest'
import { Specification } from '@/lib/domain/specification'
import { planTemplate } from '@/lib/domain/templates/plan-template'
import { QP_MD_12_REV_3, QP_MD_12_REV_4 } from '@/lib/server/demo/specifications'
import { changesOfPlan } from '@/lib/server/views/plan-changes'
import { changesOfSpecification, limitOfCriterion } from '@/lib/server/views/specification-changes'

describe('what a revision of a specification changes', () => {
  test('a specification changes nothing of itself', () => {
    expect(changesOfSpecification(QP_MD_12_REV_3, QP_MD_12_REV_3)).toEqual([])
  })

  test('revision 4 changes the probe of the cure and adds its note, and nothing else', () => {
    const changes = changesOfSpecification(QP_MD_12_REV_3, QP_MD_12_REV_4)
    expect(changes.map((one) => one.where)).toEqual(['Note', expect.stringContaining('Point 15')])
    expect(changes[0]).toMatchObject({ before: null, after: expect.stringContaining('coldest clock position') })
    expect(changes[1]?.after).toContain('coldest clock position')
    expect(changes[1]?.before).not.toContain('one at the coldest')
  })

  test('a criterion added, one taken away and a limit moved by one digit are three changes', () => {
    const [first, ...rest] = QP_MD_12_REV_3.criteria
    if (!first) throw new Error('the demo specification has criteria')
    const moved = rest.map((one) =>
      one.id === '16.each' && one.rule.kind === 'each'
        ? {
            ...one,
            rule: {
              ...one.rule,
              min: { from: 'specification' as const, value: { digits: 75, scale: 0 }, unit: 'ShoreD' as const },
            },
          }
        : one,
    )
    const after = Specification.parse({
      ...QP_MD_12_REV_3,
      criteria: [...moved, { ...first, id: '01.new', title: 'Something new' }],
    })
    const changes = changesOfSpecification(QP_MD_12_REV_3, after)
    expect(changes).toHaveLength(3)
    expect(changes.find((one) => one.where.includes('Laminate hardness, each mark'))).toMatchObject({
      before: expect.stringContaining('≥ 74 Shore D'),
      after: expect.stringContaining('≥ 75 Shore D'),
    })
    expect(changes.find((one) => one.where.includes('Something new'))?.before).toBeNull()
    expect(changes.find((one) => one.where.includes(first.title))?.after).toBeNull()
  })

  test('a figure that the words of a limit do not show is still a change', () => {
    const after = Specification.parse({
      ...QP_MD_12_REV_3,
      criteria: QP_MD_12_REV_3.criteria.map((one) =>
        one.rule.kind === 'pressure-drop'
          ? { ...one, rule: { ...one.rule, correction: { ...one.rule.correction, betaPerK: 2e-4 } } }
          : one,
      ),
    })
    expect(changesOfSpecification(QP_MD_12_REV_3, after)).toHaveLength(1)
  })

  test('a limit on the design sheet is said without a sheet that is not there', () => {
    const thickness = QP_MD_12_REV_3.criteria.find((one) => one.id === '17.thickness')
    if (!thickness) throw new Error('the demo specification limits thickness')
    expect(limitOfCriterion(thickness)).toBe('each ≥ minimum thickness as designed')
  })
})

describe('what a revision of a plan changes', () => {
  const plan = planTemplate('wet lay-up')

  test('a plan changes nothing of itself', () => {
    expect(changesOfPlan(plan, plan)).toEqual([])
  })

  test('another letter of one party is one change, named by point', () => {
    const after = {
      ...plan,
      points: plan.points.map((point) =>
        point.no === '18' ? { ...point, participation: { ...point.participation, client: 'W' as const } } : point,
      ),
    }
    const changes = changesOfPlan(plan, after)
    expect(changes).toHaveLength(1)
    expect(changes[0]?.where).toContain('Point 18')
    expect(changes[0]?.before).toContain('client H')
    expect(changes[0]?.after).toContain('client W')
  })

  test('a point taken away and an event that makes more fall are told apart', () => {
    const after = {
      ...plan,
      points: plan.points.filter((point) => point.no !== '22'),
      invalidations: plan.invalidations.map((one) =>
        one.event === 'touched'
          ? {
              ...one,
              falls: [...one.falls, ...plan.points.filter((point) => point.no === '06').map((point) => point.no)],
            }
          : one,
      ),
    }
    const changes = changesOfPlan(plan, after)
    expect(changes.map((one) => one.where).sort()).toEqual(['Event “touched”', expect.stringContaining('Point 22')])
  })
})
