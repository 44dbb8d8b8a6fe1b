import type { Finding } from './verdict'

type Words = (finding: Finding) => string

const at = (finding: Finding): string => (finding.mark ? ` at ${finding.mark}` : '')
const found = (finding: Finding): string => finding.found ?? 'nothing'
const limit = (finding: Finding): string => finding.limit ?? 'no limit'
const detail = (finding: Finding): string => (finding.detail ? `: ${finding.detail}` : '')

/** The sentence of each finding code. Codes never change once logged; sentences may. */
export const FINDING_WORDS = {
  'no-readings': (f) => `No readings${f.limit ? `, wanted ${f.limit}` : ''}`,
  'no-limit': () => 'The specification gives no limit here',
  'reading-below-limit': (f) => `${found(f)}${at(f)} is below ${limit(f)}`,
  'reading-above-limit': (f) => `${found(f)}${at(f)} is above ${limit(f)}`,
  'through-wall': (f) => `Through-wall${at(f)}, wanted ${limit(f)}`,
  'reading-undecided': (f) => `${found(f)}${at(f)} does not decide ${limit(f)}`,
  'reading-missing': (f) => `No reading${at(f)} (${found(f)})`,
  'unit-differs': (f) => `${found(f)}${at(f)} cannot be compared with ${limit(f)}: no exact conversion`,
  'uncertainty-missing': (f) => `${found(f)}${at(f)}: the certificate in force states no uncertainty, which the decision rule needs`,
  'inside-guard-band': (f) => `${found(f)}${at(f)} is within the uncertainty of ${limit(f)}`,
  'acceptance-zone-empty': (f) => `Twice the uncertainty is wider than ${limit(f)}: nothing can pass`,
  'too-few-readings': (f) => `${found(f)} taken of ${limit(f)} planned`,
  'no-number': (f) => `The reading${at(f)} is no number and cannot be averaged`,
  'mean-below-limit': (f) => `Mean ${found(f)} is below ${limit(f)}`,
  'mean-above-limit': (f) => `Mean ${found(f)} is above ${limit(f)}`,
  'design-missing': (f) => `No design sheet in force for ${limit(f)}`,
  'defect-missing': () => 'No defect record to judge from',
  'statement-missing': (f) => `Not stated${detail(f)}`,
  'stated-no': (f) => `Stated no${detail(f)}`,
  'stated-yes': (f) => `Stated yes${detail(f)}`,
  'statement-contradicts': (f) => `Statements contradict each other${detail(f)}`,
  'grade-below-limit': (f) => `Grade ${found(f)} is below ${limit(f)}`,
  'grade-unknown': (f) => `Grade ${found(f)} is no known grade`,
  'grade-not-comparable': (f) => `Grade ${found(f)} is of another family than ${limit(f)}`,
  'window-not-started': (f) => `The window has not started${detail(f)}`,
  'window-running': (f) => `The window is running: ${found(f)}, ${limit(f)}${detail(f)}`,
  'window-lapsed': (f) => `The window lapsed: ${found(f)}, ${limit(f)}${detail(f)}`,
  'window-too-short': (f) => `Too soon: ${found(f)}, ${limit(f)}${detail(f)}`,
  'window-spoiled': (f) => `The window was spoiled at ${found(f)}${detail(f)}`,
  'end-before-start': (f) => `The end was observed before the start${detail(f)}`,
  'clock-error': (f) => `${found(f)} as observed, ${f.detail ?? ''}: the outcome changes within the known clock error, ${limit(f)}`,
  'rule-unknown': () => 'This version cannot judge that rule',
} as const satisfies Record<string, Words>
export type FindingCode = keyof typeof FINDING_WORDS

/** A finding as one sentence with its clause: the same on screens and in the dossier. A code of another version shows as it is. */
export function showFinding(finding: Finding): string {
  const words = (FINDING_WORDS as Partial<Record<string, Words>>)[finding.code]
  const sentence = words ? words(finding) : [finding.code, finding.mark, finding.found, finding.limit, finding.detail].filter((part) => part !== undefined).join(' ')
  return `${sentence} (${finding.clause}).`
}
