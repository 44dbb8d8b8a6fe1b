import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import type { FactKind } from '@/lib/domain/facts/fact-kinds'
import { BODIES } from '@/lib/domain/facts/fact-kinds'
import { INVALIDATING_EVENTS } from '@/lib/domain/plan'

/** A rule of the job: the fact kinds that carry it, and the test that holds it. `toCome` says what is not built. */
type Line = { says: string; kinds: FactKind[]; file: string; title: string; toCome?: string }

const line = (says: string, kinds: FactKind[], file: string, title: string, toCome?: string): Line => ({
  says,
  kinds,
  file,
  title,
  ...(toCome && { toCome }),
})
const ENTRIES = 'domain/fold/entries.test.ts'
const FALLS = 'domain/fold/falls.test.ts'
const PASSED = 'domain/fold/passed-holds.test.ts'
const HOLDS = 'domain/fold/holds.test.ts'
const ACCEPTANCE = 'domain/fold/acceptance.test.ts'
const READINGS = 'domain/fold/readings.test.ts'
const TRACE = 'domain/trace/trace.test.ts'
const WITNESS_AND_ORDER = 'domain/fold/witness-and-order.test.ts'
const DOUBTFUL_ENTRIES = 'domain/fold/doubtful-entries.test.ts'
const USED_RELEASES = 'domain/fold/used-releases.test.ts'
const PHOTO_ENTRIES = 'domain/fold/photo-entries.test.ts'
const REVISIONS = 'domain/fold/revisions.test.ts'
const LISTED_AND_STATUS = 'domain/fold/listed-and-status.test.ts'
const JUDGE = 'domain/judge'

/** The 47 rules that inspectors apply, in order. */
const RULES: Line[] = [
  line(
    'late entry',
    ['recorded'],
    ENTRIES,
    'rule 1: a late entry keeps both times, tells its story by observed time and is listed',
  ),
  line(
    'correction without erasing',
    ['corrected', 'signed'],
    ENTRIES,
    'rule 2: a correction supersedes, the old value stays, and the signature over it breaks until signed again',
  ),
  line(
    'own error or change of fact',
    ['corrected', 'recorded'],
    ENTRIES,
    'rule 3: only own errors are corrected, and a second measurement is a record beside the first',
  ),
  line(
    'wrong clock',
    ['clock-checked'],
    ENTRIES,
    'rule 4: a window whose outcome changes within the known clock error is not proven',
  ),
  line(
    'not applicable',
    ['marked-not-applicable'],
    WITNESS_AND_ORDER,
    'rule 5: not applicable needs the right, the reason and, at a point of the client’s, the client',
  ),
  line(
    'below detection, no reading',
    ['recorded'],
    READINGS,
    'rule 6: below detection, over range, through-wall and no access are values of their own and no numbers',
  ),
  line(
    'no rounding into acceptance',
    ['recorded'],
    READINGS,
    'rule 7: nothing rounds into acceptance: 64.96 against 65 fails and is shown as read',
  ),
  line(
    'units mixed',
    ['recorded'],
    READINGS,
    'rule 8: a reading keeps its unit as read, and another unit of another kind is not compared',
    'gauge against absolute pressure is not told apart',
  ),
  line(
    'worst, mean and count',
    ['recorded'],
    READINGS,
    'rule 9: extra readings stay visible and a good count does not hide the worst',
  ),
  line('taps and marks', ['recorded'], READINGS, 'rule 10: taps are kept under the reading that they gave'),
  line(
    'copied or hasty values',
    ['recorded'],
    DOUBTFUL_ENTRIES,
    'rule 11: readings equal to an earlier grid and impossible speed are listed',
    'identical grids are sought within one repair only',
  ),
  line(
    'meaning of a signature',
    ['signed'],
    DOUBTFUL_ENTRIES,
    'rule 12: a signature has a meaning and is tied to the digest of what was signed',
  ),
  line(
    'no self-release',
    ['released', 'signed'],
    HOLDS,
    'rule 13: who did the work does not release it, unless the plan says so',
  ),
  line('partial release', ['released'], HOLDS, 'rule 14: a release of an area or up to a step leaves the rest blocked'),
  line(
    'hold passed without release',
    ['recorded', 'released'],
    PASSED,
    'rule 15: work begun without a release in force is a passed hold, and a release given later does not cure it',
  ),
  line(
    'witness absent',
    ['notice-sent', 'notice-answered', 'waived'],
    WITNESS_AND_ORDER,
    'rule 16: a client’s hold is never released by silence, only by the client or a waiver in writing before the step',
  ),
  line(
    'rework keeps the failure',
    ['attempt-opened'],
    PASSED,
    'rule 17: rework keeps the failure: the failed attempt stays beside the one that passes',
  ),
  line('order of facts', ['recorded'], `${JUDGE}/judge-records.test.ts`, 'order of facts'),
  line(
    'a pass does not outlive its cause',
    ['event-noted', 'release-withdrawn'],
    USED_RELEASES,
    'rule 19: a release that was valid when its step was done is used, and a later lapse does not touch it',
  ),
  line(
    'lapse while offline',
    ['released', 'conflict-noted'],
    DOUBTFUL_ENTRIES,
    'rule 20: a release observed before the step and received after it is marked',
  ),
  line(
    'two crews offline',
    ['governs-chosen'],
    DOUBTFUL_ENTRIES,
    'rule 21: two records of one watch by two devices stand beside each other until a person says which governs',
    'numbers are not allotted in blocks to devices',
  ),
  line(
    'stop and resume',
    ['recorded', 'repair-held'],
    USED_RELEASES,
    'rule 22: a stop makes permit and climate fall by the table, and windows run on',
  ),
  line(
    'photo of the wrong place',
    ['photo-judged'],
    PHOTO_ENTRIES,
    'rule 23: a photo that is not accepted is kept and a new one is asked for',
  ),
  line(
    'same photo twice',
    ['likeness-judged'],
    PHOTO_ENTRIES,
    'rule 24: the same bytes twice, near copies across repairs and missing metadata are flagged for a person',
  ),
  line(
    'annotated photo',
    ['photo-annotated'],
    READINGS,
    'rule 25: an annotation is a layer of its own and leaves the photo as it was',
  ),
  line(
    'photo is no measurement',
    ['photo-disagrees'],
    PHOTO_ENTRIES,
    'rule 26: a photo that disagrees with the reading is listed',
  ),
  line(
    'paper remains original',
    ['recorded'],
    PHOTO_ENTRIES,
    'rule 27: a transcription says who keeps the paper and whether a second person checked it',
  ),
  line(
    'instrument found wrong later',
    ['found-wrong', 'check-made', 'impact-decided'],
    TRACE,
    'rule 28: an instrument found wrong is searched from its last good full check, across repairs',
  ),
  line(
    'in date at use',
    ['certificate-recorded'],
    `${JUDGE}/judge-traces.test.ts`,
    'instruments in force on the day of use',
  ),
  line(
    'batch recalled later',
    ['batch-recalled', 'owner-notified'],
    TRACE,
    'rule 30: a recalled batch reaches every repair and attempt that used it, and what is left in store',
  ),
  line(
    'expired resin',
    ['batch-opened', 'maker-letter'],
    `${JUDGE}/judge-batches.test.ts`,
    'batches in date at use',
    'a maker’s letter is not yet asked whether it came before the use',
  ),
  line('ratio by mass or by volume', ['recorded'], `${JUDGE}/judge-mixes.test.ts`, 'mixing ratio by mass'),
  line(
    'qualification lapsed',
    ['qualification-recorded'],
    `${JUDGE}/judge-persons.test.ts`,
    'names supervision by a qualified supervisor as such',
  ),
  line(
    'person left or renamed',
    ['person-renamed', 'person-left'],
    TRACE,
    'rule 34: a renamed person keeps the identity that signed',
  ),
  line(
    'location is relative',
    ['repair-opened'],
    READINGS,
    'rule 35: a place is told from its datum and with the direction of view',
  ),
  line(
    'specification revised mid-job',
    ['specification-issued', 'stands-or-redo'],
    REVISIONS,
    'rule 36: work is judged by the revision in force when performed, and the engineer says whether it stands',
  ),
  line('as-found differs from design', ['recorded'], `${JUDGE}/judge-points.test.ts`, 'design envelope'),
  line(
    'accept under concession',
    ['disposition-proposed', 'disposition-approved', 'accepted'],
    ACCEPTANCE,
    'rule 38: a concession stands beside the fail, needs engineer and client, and never flips the reading',
  ),
  line(
    'conditional acceptance',
    ['accepted', 'condition-discharged'],
    ACCEPTANCE,
    'rule 39: a condition of acceptance stays open in the register until it is discharged',
  ),
  line(
    'service test is no pressure test',
    ['recorded'],
    `${JUDGE}/judge-pressure-test.test.ts`,
    'is not proven without steel, leak statement or test; a leak fails',
  ),
  line(
    'life from a stated date',
    ['accepted', 'life-reviewed'],
    ACCEPTANCE,
    'rule 41: a missed inspection is overdue, an early one does not move the date, limits only shorten it',
  ),
  line(
    'repair over or beside a repair',
    ['repair-opened', 'recorded'],
    TRACE,
    'rule 42: repairs whose wraps share a stretch of one line from one datum are told',
    'repairs measured from different datums are not compared',
  ),
  line(
    'dossier revised',
    ['dossier-issued', 'transmitted'],
    REVISIONS,
    'rule 43: a fact after the last issue makes a revision due, the handover of that issue does not',
  ),
  line(
    'retention',
    ['disposed'],
    LISTED_AND_STATUS,
    'rule 44 and removal: a disposal is recorded and a removal closes the register row',
    'no term of retention is kept',
  ),
  line(
    'export stands alone',
    ['dossier-issued'],
    'domain/fold/set-of-facts.test.ts',
    'any permutation of the facts gives the same state',
    'the stranger’s check of a dossier is tested in its own room',
  ),
  line(
    'absence of evidence',
    ['submitted'],
    LISTED_AND_STATUS,
    'rule 46: everything that the plan asks for and is not there is listed',
  ),
  line(
    'pass from a half-filled form',
    ['submitted', 'released'],
    HOLDS,
    'rule 47: a fail, a half-filled record and a missing signature are no pass and refuse the release',
  ),
]

/** The rows of what makes an earlier release fall. */
const ROWS: Line[] = [
  line(
    'wet',
    ['event-noted'],
    FALLS,
    'row wet: a wet surface makes the releases of the table fall, and history says when, why and by whom',
  ),
  line(
    'prep-lapsed',
    ['recorded'],
    FALLS,
    'row prep window lapsed: the release falls at the minute the window ends, not when somebody looks',
  ),
  line(
    'weep',
    ['recorded'],
    FALLS,
    'row re-leak or weep: before the wrap the watch falls, after it the wrap and what follows',
  ),
  line('touched', ['event-noted'], FALLS, 'row touched surface: only the named area falls, and its re-check heals it'),
  line(
    'pressure-raised',
    ['event-noted'],
    FALLS,
    'row pressure raised: watch and wrap fall until the engineer decides',
  ),
  line('working-time-exceeded', ['event-noted'], FALLS, 'row working time exceeded: the wrap falls'),
  line(
    'cure-interrupted',
    ['recorded'],
    FALLS,
    'row cure interrupted: a cure record that says so makes the hardness release before it fall',
  ),
  line(
    'specification or design revised',
    ['stands-or-redo'],
    FALLS,
    'row spec or design revised: an engineer says stands or redo, and redo makes the release fall',
  ),
  line(
    'instrument, person or batch found invalid later',
    ['found-wrong', 'qualification-recorded', 'batch-recalled'],
    FALLS,
    'row instrument found invalid later: the point that relied on it is in question, its verdict stays',
  ),
  line(
    'damage',
    ['event-noted'],
    FALLS,
    'row damage after acceptance: hardness and acceptance points fall though they were used',
  ),
  line(
    'stopped',
    ['recorded'],
    USED_RELEASES,
    'rule 22: a stop makes permit and climate fall by the table, and windows run on',
  ),
]

const known = new Set<string>(Object.values(BODIES).flatMap((bodies) => Object.keys(bodies)))
const sources = new Map<string, string>()
function sourceOf(file: string): string {
  const text = sources.get(file) ?? readFileSync(new URL(`../${file}`, import.meta.url), 'utf8')
  sources.set(file, text)
  return text
}

test('every one of the 47 rules is mapped', () => {
  expect(RULES).toHaveLength(47)
  RULES.forEach((one, at) => {
    const named = /^rule (\d+)/.exec(one.title)
    if (named) expect(Number(named[1]), one.title).toBe(at + 1)
  })
})

test('every row of the invalidation table is mapped, and every event that a plan may name', () => {
  expect(ROWS.map((one) => one.says)).toEqual(expect.arrayContaining([...INVALIDATING_EVENTS]))
})

test.each([...RULES, ...ROWS])('$says: its fact kinds exist and its test is there', ({ kinds, file, title }) => {
  expect(kinds.length).toBeGreaterThan(0)
  expect(kinds.filter((kind) => !known.has(kind))).toEqual([])
  expect(
    [`test('${title}'`, `it('${title}'`, `describe('${title}'`].some((text) => sourceOf(file).includes(text)),
    `${title} in ${file}`,
  ).toBe(true)
})

test('what is still to come is said in words', () => {
  expect(RULES.filter((one) => one.toCome).map((one) => one.says)).toEqual([
    'units mixed',
    'copied or hasty values',
    'two crews offline',
    'expired resin',
    'repair over or beside a repair',
    'retention',
    'export stands alone',
  ])
})
