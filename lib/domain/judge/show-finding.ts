import type { CriterionResult, Finding } from './verdict'

type Words = (finding: Finding) => string

const at = (finding: Finding): string => (finding.mark ? ` at ${finding.mark}` : '')
const found = (finding: Finding): string => finding.found ?? 'nothing'
const limit = (finding: Finding): string => finding.limit ?? 'no limit'
const sentenceCase = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
const bare = (finding: Finding): string => limit(finding).replace(/^[≥≤] /, '')
const detail = (finding: Finding): string => (finding.detail ? `: ${finding.detail}` : '')

const reversed =
  (words: string): Words =>
  (f) =>
    `${words}${f.mark ? ` (${f.mark})` : ''}: ${found(f)} is before ${limit(f)}`

/** Rule 18 of the trade: times the wrong way round. `found` is the time that should be the later one. */
const ORDER_WORDS = {
  'checked-before-prepared': reversed('Looked at before it was prepared'),
  'kneading-reversed': reversed('Kneading ended before it began'),
  'pressed-before-kneaded': reversed('Pressed on before it was kneaded'),
  'hard-before-pressed': reversed('Judged hard before it was pressed on'),
  'watch-reversed': reversed('Watch ended before it began'),
  'drip-before-watch': reversed('Drip seen before the watch began'),
  'mix-reversed': reversed('Mixing ended before it began'),
  'used-before-mixed': reversed('Used before it was mixed'),
  'measured-before-placed': reversed('Measured before it was placed'),
  'ply-reversed': reversed('Ply ended before it began'),
  'wrapped-before-soaked': reversed('Wrapped before it was soaked'),
  'wrap-reversed': reversed('Wrap ended before it began'),
  'cure-reversed': reversed('Cure ended before it began'),
  'hardness-reversed': reversed('Hardness test ended before it began'),
  'test-reversed': reversed('Test readings run backwards'),
  'permit-reversed': reversed('Permit ends before it begins'),
  'ply-before-its-mix': reversed('Ply placed before its resin was mixed'),
  'placed-before-mixed': reversed('Filler placed before it was mixed'),
  'hardness-before-last-ply': reversed('Hardness read before the last ply'),
  'thickness-before-last-ply': reversed('Thickness read before the last ply'),
  'cure-before-last-ply': reversed('Cure ended before the last ply'),
  'filler-read-before-placed': reversed('Filler read before it was placed'),
  'watch-before-arrest': reversed('Watch began before the leak was arrested'),
  'plies-backwards': reversed('Plies begin out of turn'),
  'rolls-backwards': reversed('Rolls begin out of turn'),
} as const satisfies Record<string, Words>

/** The sentence of each finding code. Codes never change once logged; sentences may. */
export const FINDING_WORDS = {
  'no-readings': (f) => `${sentenceCase(f.found ?? 'no readings')}${f.limit ? `, wanted ${f.limit}` : ''}`,
  'no-limit': () => 'The specification gives no limit here',
  'reading-below-limit': (f) => `${found(f)}${at(f)} is below ${bare(f)}`,
  'reading-above-limit': (f) => `${found(f)}${at(f)} is above ${bare(f)}`,
  'through-wall': (f) => `Through-wall${at(f)}, wanted ${limit(f)}`,
  'reading-undecided': (f) => `${found(f)}${at(f)} does not decide ${limit(f)}`,
  'reading-missing': (f) => `No reading${at(f)} (${found(f)})`,
  'unit-differs': (f) => `${found(f)}${at(f)} cannot be compared with ${limit(f)}: no exact conversion`,
  'uncertainty-missing': (f) =>
    `${found(f)}${at(f)}: the certificate in force states no uncertainty, which the decision rule needs`,
  'inside-guard-band': (f) => `${found(f)}${at(f)} is within the uncertainty of ${limit(f)}`,
  'acceptance-zone-empty': (f) => `Twice the uncertainty is wider than ${limit(f)}: nothing can pass`,
  'reading-not-of-its-taps': (f) => `${found(f)}${at(f)} is not the ${limit(f)}${f.detail ? ` of ${f.detail}` : ''}`,
  'too-few-readings': (f) => `${found(f)} taken of ${limit(f)} planned`,
  'no-number': (f) => `The reading${at(f)} is no number and cannot be averaged`,
  'mean-below-limit': (f) => `Mean ${found(f)} is below ${bare(f)}`,
  'mean-above-limit': (f) => `Mean ${found(f)} is above ${bare(f)}`,
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
  'clock-error': (f) =>
    `${found(f)} as observed, ${f.detail ?? ''}: the outcome changes within the known clock error, ${limit(f)}`,
  'mass-missing': (f) => `Amount not stated${at(f)}, wanted ${limit(f)}`,
  'by-volume': (f) => `Mixed by volume${at(f)}: that does not prove ${limit(f)}`,
  'ratio-outside': (f) => `100 : ${found(f)}${at(f)} is outside ${limit(f)}`,
  'start-missing': (f) => `The start of ${f.mark ?? 'the mix'} is not stated`,
  'time-missing': (f) => `A time is missing: ${found(f)}`,
  'temperature-missing': (f) => `A temperature is missing${at(f)}${detail(f)}`,
  'too-warm': (f) => `${found(f)}${at(f)} is above the table: not allowed`,
  'temp-below-table': (f) => `${found(f)}${at(f)} is below the table: no time is given`,
  'table-refused': (f) => `The table of the specification cannot be used${detail(f)}`,
  'working-time-exceeded': (f) => `${f.mark ?? 'Mix'} used over ${found(f)}, allowed ${limit(f)}`,
  'working-time-running': (f) => `${f.mark ?? 'Mix'} is in use: ${found(f)} of ${limit(f)}`,
  'hardening-too-short': (f) => `Plug judged hard after ${found(f)}, wanted ${limit(f)}`,
  'plug-too-small': (f) => `Putty used ${found(f)}, wanted ${limit(f)}`,
  'measure-missing': (f) => `A measure is missing${at(f)}${f.limit ? `, wanted ${f.limit}` : ''}`,
  'not-computed': (f) => `Not computed${at(f)}${detail(f)}`,
  'tail-too-short': (f) => `Band tail ${found(f)}, wanted ${limit(f)}`,
  'band-too-short': (f) => `Band cut ${found(f)}, wanted ${limit(f)}`,
  'start-too-near': (f) => `Tape starts ${found(f)} before the leak, wanted ${limit(f)}`,
  'cure-not-held': (f) => `${found(f)}${at(f)}: ${limit(f)} was not held${detail(f)}`,
  'cure-running': (f) => `The cure is running${at(f)}: ${limit(f)} wanted${detail(f)}`,
  'log-too-short': (f) => `One reading${at(f)} is no time: ${limit(f)} wanted`,
  'coldest-unknown': () => 'The coldest clock position is not known: no steel temperature was read',
  'no-probe-at-coldest': (f) => `No probe at the coldest clock position, ${f.mark ?? '?'}; probes at ${found(f)}`,
  'cure-incomplete': (f) => `Equivalent cure ${found(f)}, wanted ${limit(f)}`,
  'not-tested': () => 'Not tested, line in service',
  'held-too-short': (f) => `Held ${found(f)}, wanted ${limit(f)}`,
  'drop-too-large': (f) => `Pressure drop ${found(f)}, allowed ${limit(f)}`,
  'unexplained-rise': (f) => `Pressure rose unexplained: drop ${found(f)}, allowed ${limit(f)} either way`,
  'leak-seen': () => 'A leak was seen on walk-down',
  'finding-not-allowed': (f) => `${found(f)}${at(f)}: not allowed`,
  'finding-too-large': (f) => `${found(f)}${at(f)}, allowed ${limit(f)}`,
  'outside-envelope': (f) =>
    `${f.mark ?? 'As found'} ${found(f)} is outside the design envelope, ${limit(f)}: redesign`,
  'ply-count-differs': (f) => `${found(f)}${f.mark ? ` by ${f.mark}` : ''}, designed ${limit(f)}`,
  'too-few-counts': (f) => `Plies counted by ${found(f)} of ${limit(f)} persons`,
  'plies-not-recorded': (f) => `${found(f)}, designed ${limit(f)}`,
  'tape-apart': () => 'The pitch is wider than the tape: turns do not touch',
  'no-instrument': () => 'No instrument recorded',
  'instrument-unknown': (f) => `${f.mark ?? 'An instrument'} is not known`,
  'instrument-quarantined': (f) =>
    `${f.mark ?? 'An instrument'} used ${found(f)} while in quarantine since ${limit(f)}${detail(f)}`,
  'instrument-refused': (f) => `${f.mark ?? 'An instrument'} was refused at its check`,
  'certificate-lapsed': (f) =>
    `${f.mark ?? 'An instrument'} used on ${found(f)}, certificate${f.detail ? ` ${f.detail}` : ''} to ${limit(f)}`,
  'certificate-missing': (f) => `${f.mark ?? 'An instrument'} has no certificate for ${found(f)}`,
  'outside-certified-range': (f) =>
    `${found(f)}${at(f)} is outside the certified range ${limit(f)}${f.detail ? ` of ${f.detail}` : ''}`,
  'check-outside-tolerance': (f) => `${f.mark ?? 'An instrument'} read ${found(f)} on its reference of ${limit(f)}`,
  'no-batch': () => 'No batch recorded',
  'batch-unknown': (f) => `${f.mark ?? 'A batch'} is not known`,
  'batch-expired': (f) => `Batch ${f.mark ?? '?'} used on ${found(f)}, use by ${limit(f)}`,
  'batch-recalled': (f) => `Batch ${f.mark ?? '?'} was recalled before its use on ${found(f)}${detail(f)}`,
  'batch-quarantined': (f) =>
    `Batch ${f.mark ?? '?'} used ${found(f)} while in quarantine since ${limit(f)}${detail(f)}`,
  'stored-outside-range': (f) => `Batch ${f.mark ?? '?'} stored at ${found(f)}, wanted ${limit(f)}`,
  'no-person': () => 'Nobody recorded for qualified work',
  'person-unknown': (f) => `${f.mark ?? 'A person'} is not known`,
  'qualification-missing': (f) =>
    `${f.mark ?? 'A person'}: no qualification known for ${f.detail ?? 'the work'}, ${found(f)}`,
  'qualification-lapsed': (f) =>
    `${f.mark ?? 'A person'}, ${f.detail ?? 'qualified work'} on ${found(f)}: qualified to ${limit(f)}`,
  'qualification-not-yet': (f) =>
    `${f.mark ?? 'A person'}, ${f.detail ?? 'qualified work'} on ${found(f)}: not yet qualified`,
  'qualification-scope': (f) =>
    `${f.mark ?? 'A person'} is qualified for ${found(f)}, not ${limit(f)}${f.detail ? ` (${f.detail})` : ''}`,
  'qualification-scope-missing': (f) =>
    `${f.mark ?? 'A person'}: the qualification${f.detail ? ` ${f.detail}` : ''} states no geometry, wanted ${limit(f)}`,
  'permit-missing': () => 'No permit recorded',
  'permit-not-covering': (f) => `${found(f)} is outside the permit ${limit(f)}`,
  'photo-missing': (f) => `Photo ${found(f)} of ${limit(f)}${detail(f)}`,
  ...ORDER_WORDS,
} as const satisfies Record<string, Words>
export type FindingCode = keyof typeof FINDING_WORDS

/** What was found, unless one of the findings begins with it: it is said once. */
export function foundBeside({ found: told, findings }: Pick<CriterionResult, 'found' | 'findings'>): string | null {
  return findings.some((one) => showFinding(one).toLowerCase().startsWith(told.toLowerCase())) ? null : told
}

/** A finding as one sentence with its clause: the same on screens and in the dossier. A code of another version shows as it is. */
export function showFinding(finding: Finding): string {
  const words = (FINDING_WORDS as Partial<Record<string, Words>>)[finding.code]
  const sentence = words
    ? words(finding)
    : [finding.code, finding.mark, finding.found, finding.limit, finding.detail]
        .filter((part) => part !== undefined)
        .join(' ')
  return `${sentence} (${finding.clause}).`
}
