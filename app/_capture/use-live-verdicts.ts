'use client'
import { useMemo } from 'react'
import type { PersonId } from '@/lib/domain/facts/fact'
import type { DraftRecord, JudgeContext } from '@/lib/domain/judge/judge-context'
import { judgePoint } from '@/lib/domain/judge/judge-criterion'
import type { CriterionResult } from '@/lib/domain/judge/verdict'
import type { Moment } from '@/lib/domain/time'

/** Judge the point with the draft beside what is recorded; a correction's draft stands in the place of its target. */
export function useLiveVerdicts(
  judge: JudgeContext,
  draft: DraftRecord,
  observedAt: Moment,
  observedBy: PersonId,
  replaces: string | null,
): { results: CriterionResult[]; failing: ReadonlyMap<string, ReadonlySet<string>> } {
  return useMemo(() => {
    const others = judge.records.filter((one) => one.fact !== replaces)
    const now = Date.parse(judge.asOf) > Date.parse(observedAt) ? judge.asOf : observedAt
    const results = judgePoint({
      ...judge,
      asOf: now,
      records: [
        ...others,
        { fact: null, record: draft, point: judge.point.no, attempt: judge.attempt, observedAt, observedBy },
      ],
    })
    const failing = new Map<string, Set<string>>()
    for (const result of results) {
      if (result.criterion.rule.kind !== 'each') continue
      const marks = failing.get(result.criterion.rule.quantity) ?? new Set<string>()
      for (const finding of result.findings) if (finding.mark && result.verdict === 'fail') marks.add(finding.mark)
      failing.set(result.criterion.rule.quantity, marks)
    }
    return { results, failing }
  }, [judge, draft, observedAt, observedBy, replaces])
}
