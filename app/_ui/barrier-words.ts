import { barrierTexts } from '@/lib/domain/barrier-texts'

type Says = (told: readonly string[]) => string | string[]

const all = (told: readonly string[]): string => told.join(', ')
const points = (told: readonly string[]): string => `${told.length === 1 ? 'Point' : 'Points'} ${all(told)}`
const are = (told: readonly string[]): string => (told.length === 1 ? 'is' : 'are')

/** What stands against a decision, by the domain's code, each with what to do. `told` are the facts of the refusal as texts. */
const WORDS: Readonly<Record<string, Says>> = {
  incomplete: (told) => [...told],
  'verdict-not-pass': ([verdict]) => `The verdict is ${verdict}: a release to the plan needs pass, or a concession.`,
  blocked: (told) =>
    `${points(told)} ${are(told)} not released and valid: ${told.length === 1 ? 'that' : 'those'} first.`,
  'nonconformance-blocks': (told) => `${all(told)} blocks this point until it is put right or conceded.`,
  'own-work': () => 'Nobody releases work that they did themselves: another person must release it.',
  'not-allowed': (told) => `This is for: ${all(told)}.`,
  'not-a-hold': () => 'The plan gives that party no hold here.',
  'not-a-right': () => 'The plan gives that party no hold and no witness here: there is nothing to waive.',
  'not-applicable': () => 'The point is marked not applicable.',
  'already-released': () => 'It is released already, with this scope.',
  'passed-without-release': () =>
    'Work went past this hold before its release. A release after the fact does not cure it: raise a nonconformance.',
  'step-done': () => 'The step was done before: nothing is left to waive.',
  'in-question': (told) =>
    told.length === 0
      ? 'The attempt is in question until a person decides its effect.'
      : `${points(told)} ${are(told)} in question until a person decides the effect.`,
  'attempt-superseded': () => 'A later attempt is open: decide there.',
  'has-records': () => 'Something is recorded in it: a point that was worked is not “not applicable”.',
  'client-agreement-missing': () => 'It is a point of the client: the client’s agreement must be in the record first.',
  'release-fallen': ([state]) => `The release is ${state} already.`,
  'on-hold': () => 'The repair is on hold or abandoned: decide that first.',
  'already-accepted': () => 'The repair is accepted: nothing is decided at its points any more.',
  'nonconformance-open': (told) => `${all(told)} ${are(told)} open: close what blocks acceptance first.`,
  'not-released': (told) =>
    `${points(told)} ${are(told)} not released and valid: release ${told.length === 1 ? 'it' : 'them'} first.`,
  'conflict-open': (told) => `A conflict waits for a ruling at ${told.length === 1 ? 'point' : 'points'} ${all(told)}.`,
  'revision-undecided': (told) =>
    `Nobody has said whether ${points(told).toLowerCase()} ${told.length === 1 ? 'stands' : 'stand'} under the new revision.`,
  'concession-not-stated': (told) => `${points(told)} ${are(told)} conceded: accept under concession.`,
  'concession-unknown': () => 'No nonconformance of this repair bears that concession.',
  'plan-has-no-acceptance': () => 'The plan has no point that records an acceptance.',
  'conditions-do-not-fit': () => 'A repair accepted on condition names a condition, and no other kind does.',
  'state-does-not-allow': ([state, ...follows]) => `It is ${state}. This follows only: ${all(follows)}.`,
  'approval-not-needed': (told) =>
    told.length === 0 ? 'Its approvals are complete.' : `It is to be approved by: ${all(told)}.`,
  'raiser-does-not-reject': () => 'Who raised it does not reject it: another person must.',
  'not-issued': ([what]) => `${(what ?? '').replace(':', ' ')} has no issued revision: issue one first.`,
  'revision-taken': ([next]) => `That revision is there already: the next is ${next}.`,
  'ruled-already': () => 'It was ruled on meanwhile: look at the ruling.',
  'ruling-does-not-fit': () => 'That ruling is not for this conflict: look at it again.',
  'not-quarantined': () => 'It is not in quarantine.',
  recalled: () => 'It was recalled: a recall is not lifted.',
  'approve-is-for-inspectors': () => 'The right to approve goes with the role of an inspector alone.',
  'person-has-account': () => 'That person has an account already.',
  'email-taken': () => 'Another account has that address.',
  'numbers-exhausted': ([last]) => `The numbers end at ${last}: take another prefix.`,
  'record-too-large-for-a-device': () => 'The record is too large for a device: work on it where there is a network.',
}

/** Why something is not decided, in words: what the domain refused, as it stands or as a command gives it (`why`, with its facts as texts). */
export function barrierWords(barrier: { code: string; [fact: string]: unknown }): string[] {
  const { code, ...facts } = barrier
  return notDecidedWords(code, Object.values(facts).flatMap(barrierTexts))
}

/** The same for a command's `not-decided`. What has no words here is said as it came. */
export function notDecidedWords(why: string, told: readonly string[]): string[] {
  const said = WORDS[why]?.(told) ?? [/\s/.test(why) ? why : `${why.replaceAll('-', ' ')}.`, ...told]
  return typeof said === 'string' ? [said] : said
}
