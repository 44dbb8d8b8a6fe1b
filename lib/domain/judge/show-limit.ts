import { showDecimal } from '../decimal'
import type { Criterion, Rule, RuleKind } from '../specification'
import { boundsOf } from './exact-limit'
import type { JudgeContext } from './judge-context'
import { showWindowLimit } from './judge-window'
import { FLAGS } from './quantity-names'

type Shows = {
  [K in RuleKind]: (rule: Extract<Rule, { kind: K }>, basis: Pick<JudgeContext, 'design' | 'defect'>) => string
}

const SHOWS: Shows = {
  each: (rule, basis) => `each ${boundsOf(rule, basis).text}`,
  mean: (rule, basis) => `mean ${boundsOf(rule, basis).text}`,
  count: (rule) => `at least ${rule.atLeast}`,
  grade: (rule) => `${rule.grades.join(' or ')} or better`,
  yes: (rule) => `${flagWords(rule.flag)}: yes`,
  no: (rule) => `${flagWords(rule.flag)}: no`,
  window: showWindowLimit,
  ratio: (rule) => `100 : ${showDecimal(rule.partBPer100)} ± ${showDecimal(rule.tolerance)} by mass`,
  'working-time': (rule) => `used within the working time: ${showTable(rule.table)}`,
  'hardening-time': (rule) => `hard after: ${showTable(rule.table)}`,
  'plug-amount': (rule) => `≥ ${showDecimal(rule.timesHoleVolume)} × hole area × wall`,
  'band-length': (rule) => `cut ≥ girth + build + tail; tail ≥ ${showDecimal(rule.tailAtLeast)} mm`,
  'tape-start': (rule) => `≥ ${showDecimal(rule.shareOfTotalLength)} × total length before the leak`,
  'cure-hold': (rule) =>
    `≥ ${showDecimal(rule.hours)} h unbroken at ≥ ${showDecimal(rule.atLeastTemp)} °C at every probe${rule.probeAtColdest ? ', one at the coldest clock position' : ''}`,
  'cure-equivalent': (rule) => `equivalent cure complete: ${showTable(rule.table)}`,
  'pressure-drop': (rule) =>
    `drop ≤ ${showDecimal(rule.maxDrop)} MPa over ≥ ${showDecimal(rule.minMinutes)} min, no leak`,
  findings: (rule) =>
    rule.allowed.length === 0
      ? 'no findings'
      : rule.allowed.map((one) => `${one.finding} ≤ ${showDecimal(one.maxSize)} mm`).join(', '),
  'design-envelope': (_rule, basis) =>
    basis.design
      ? `within the envelope of sheet ${basis.design.sheetNo} rev ${basis.design.revision}`
      : 'within the design envelope',
  plies: (rule, basis) =>
    `${basis.design ? showDecimal(basis.design.plies) : 'designed'} plies, counted by ${rule.countedBy}`,
  'instruments-valid': () => 'certificate in force on the day, range covers the reading',
  'batches-valid': () => 'in date at use, not recalled or quarantined',
  'persons-qualified': () => 'qualified for the task and geometry on the day, or supervised',
  'permit-valid': () => 'permit covers the work',
  photos: () => 'photos that the plan demands',
  'order-of-facts': () => 'times in the order of the work',
}

/** The limit of a criterion in words, with values of the design sheet in force: the same sentence on screens and in the dossier. */
export function showLimit(criterion: Criterion, basis: Pick<JudgeContext, 'design' | 'defect'>): string {
  const show = SHOWS[criterion.rule.kind] as (rule: Rule, basis: Pick<JudgeContext, 'design' | 'defect'>) => string
  return show(criterion.rule, basis)
}

function flagWords(flag: string): string {
  return (FLAGS as Partial<Record<string, string>>)[flag] ?? flag
}

function showTable(table: Extract<Rule, { kind: 'working-time' }>['table']): string {
  const rows = table.rows.map(
    (row) => `${table.kind === 'step' ? 'to ' : ''}${showDecimal(row.temp)} °C ${showDecimal(row.minutes)} min`,
  )
  return rows.join(', ')
}
