import { showDecimal } from '@/lib/domain/decimal'
import { showLimit } from '@/lib/domain/judge/show-limit'
import type { Criterion, Specification } from '@/lib/domain/specification'

/** One difference between two revisions, each side in words; null where a side does not have it. */
export type Change = { where: string; before: string | null; after: string | null }

/** The limit of a criterion as a specification states it, before any design sheet. */
export function limitOfCriterion(criterion: Criterion): string {
  return showLimit(criterion, { design: null, defect: null })
    .replaceAll(' (no design sheet)', '')
    .replace('≥ plies as designed', 'plies as designed')
}

/** What one specification changes of another: head, criteria added, taken away or changed. Empty when nothing does. */
export function changesOfSpecification(before: Specification, after: Specification): Change[] {
  const changes: Change[] = []
  const put = (where: string, a: string | null, b: string | null) => {
    if (a !== b) changes.push({ where, before: a, after: b })
  }
  const heads = [headOf(before), headOf(after)] as const
  for (const key of Object.keys(heads[1])) put(key, heads[0][key] ?? null, heads[1][key] ?? null)
  for (const note of after.notes.filter((one) => !before.notes.includes(one))) put('Note', null, note)
  for (const note of before.notes.filter((one) => !after.notes.includes(one))) put('Note', note, null)
  const old = new Map(before.criteria.map((one) => [one.id, one]))
  for (const criterion of after.criteria) {
    const was = old.get(criterion.id)
    old.delete(criterion.id)
    const place = `Point ${criterion.point}, ${criterion.title}`
    if (!was) {
      put(place, null, wordsOf(criterion))
      continue
    }
    put(place, wordsOf(was), wordsOf(criterion))
    if (wordsOf(was) === wordsOf(criterion) && JSON.stringify(was.rule) !== JSON.stringify(criterion.rule))
      put(place, JSON.stringify(was.rule), JSON.stringify(criterion.rule))
  }
  for (const gone of old.values()) put(`Point ${gone.point}, ${gone.title}`, wordsOf(gone), null)
  return changes
}

function wordsOf(criterion: Criterion): string {
  return `${criterion.clause} ${criterion.title}: ${limitOfCriterion(criterion)}`
}

function headOf(body: Specification): Record<string, string> {
  return {
    Title: body.title,
    'Leak arrest allowed': body.arrest.join(', '),
    Wrap: body.wrap,
    'Decision rule': body.decisionRule,
    'Dew point': body.dewPointFormula,
    'Notice to witnesses': `${showDecimal(body.noticeHours)} h`,
    'Wait for a witness': `${showDecimal(body.witnessWaitMinutes)} min`,
    'Life counts from': body.lifeCountsFrom,
    'Extended cures allowed': String(body.extendedCuresAllowed),
    'Taps at a mark': body.tapRule,
  }
}
