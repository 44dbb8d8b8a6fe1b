import { judgeCriterion } from '@/lib/domain/judge/judge-criterion'
import type { Rule } from '@/lib/domain/specification'
import { contextOf, criterion, type recordedAt } from './judge-fixtures'

type Judged = ReturnType<typeof recordedAt>

export const judge = (rule: Rule, records: Judged[], more: Parameters<typeof contextOf>[2] = {}) =>
  judgeCriterion(criterion(rule, '17'), contextOf([criterion(rule, '17')], records, more))

export const codeOf = (rule: Rule, records: Judged[], more: Parameters<typeof contextOf>[2] = {}) => {
  const { verdict, findings } = judge(rule, records, more)
  return [verdict, findings[0]?.code]
}
