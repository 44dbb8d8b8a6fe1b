import { parseDecimal } from '@/lib/domain/decimal'
import type { BodyOf } from '@/lib/domain/facts/fact-kinds'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { done, type Result, refused } from '@/lib/domain/result'

export const ACCEPTANCE_KINDS = ['accepted', 'accepted under concession', 'accepted on condition'] as const
/** An acceptance as it is keyed. */
export type AcceptanceDraft = {
  kind: (typeof ACCEPTANCE_KINDS)[number] | ''
  life: string
  from: string
  next: string
  restrictions: string
  condition: { text: string; owner: string; dueOn: string }
}
export const NO_ACCEPTANCE: AcceptanceDraft = {
  kind: '',
  life: '',
  from: '',
  next: '',
  restrictions: '',
  condition: { text: '', owner: '', dueOn: '' },
}

/** What is said with an acceptance; what was seen of the record is named when it is given. */
const Said = REPAIR_BODIES.accepted.unwrap().omit({ heads: true })
type Unreadable = { code: 'invalid'; fields: Record<string, string[]> }

/** What is accepted, from what was keyed. Refuses `invalid` with every field that is missing or cannot be read; nothing is taken for granted. */
export function acceptanceOf(
  { kind, life, from, next, restrictions, condition }: AcceptanceDraft,
  concessions: readonly string[],
): Result<Omit<BodyOf<'accepted'>, 'heads'>, Unreadable> {
  const lifeYears = parseDecimal(life)
  const isOnCondition = kind === 'accepted on condition'
  const fields = {
    ...(lifeYears ? {} : { Life: ['a number of years'] }),
    ...(from ? {} : { 'Life counts from': ['a day'] }),
    ...(next ? {} : { 'Next inspection': ['a day'] }),
    ...(isOnCondition && !(condition.text.trim() && condition.owner && condition.dueOn)
      ? { Condition: ['what must be done, its owner and the day it is due'] }
      : {}),
  }
  if (Object.keys(fields).length > 0) return refused({ code: 'invalid', fields })
  const said = Said.safeParse({
    kind,
    lifeYears,
    lifeFrom: from,
    nextInspectionOn: next,
    restrictions: restrictions
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line !== ''),
    ...(kind === 'accepted under concession' && concessions[0] ? { concession: concessions[0] } : {}),
    conditions: isOnCondition ? [condition] : [],
  })
  return said.success
    ? done(said.data)
    : refused({
        code: 'invalid',
        fields: Object.fromEntries(said.error.issues.map((one) => [one.path.join('.'), [one.message]])),
      })
}
