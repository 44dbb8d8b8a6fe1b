import type { FactId, PersonId } from '../facts/fact'
import type { Fact, FactOf } from '../facts/fact-kinds'
import { EVENT_TEXT } from '../plan'
import { instantOf, type Moment, showMoment } from '../time'
import { clockFaults } from './clock-faults'
import { correctionWords } from './correction-words'
import { copiedReadings, hastyReadings } from './doubtful-entries'
import { isLate, type UnappliedCorrection } from './effective-records'
import { showRecordType } from './missing-for-release'
import { personName } from './person-name'
import type { Remarkable } from './remarkable'
import type { RepairGround } from './repair-ground'
import type { PhotoFlag, PhotoState, PointState, RepairState } from './repair-state'
import { transcriptionState, transcriptionWords } from './transcription-states'

const ABOUT: { readonly [K in Fact['kind']]?: Remarkable['about'] } = {
  corrected: 'correction',
  'transcription-checked': 'copy from paper',
}

/** What a reader is told without asking, by time: late entries, corrections, clock faults, refusals, copies, falls, conflicts and doubtful entries. */
export function remarkableList(
  ground: RepairGround,
  points: readonly PointState[],
  conflicts: RepairState['conflicts'],
): Remarkable[] {
  const list: Remarkable[] = []
  const say = (fact: { id: FactId; observedAt: Moment }, text: string, about: Remarkable['about'] = 'other') =>
    list.push({ at: fact.observedAt, fact: fact.id, about, text: sentence(text) })
  const known = new Set(points.map((point) => point.no))
  for (const fact of ground.own) {
    if (isLate(fact, ground.beside.lateAfterMinutes))
      say(
        fact,
        `Late entry, keyed ${showMoment(fact.enteredAt)} by ${personName(ground, fact.enteredBy)}${fact.late ? ` from ${fact.late.source}: ${fact.late.reason}` : ''}.`,
        'late entry',
      )
    const text = ownText(ground, fact)
    if (text) say(fact, text, ABOUT[fact.kind])
    const copied = fact.kind === 'recorded' ? transcribedText(ground, fact) : null
    if (copied) say(fact, copied, 'copy from paper')
  }
  for (const one of ground.unapplied) say(one.fact, unappliedText(ground, one))
  for (const one of ground.records) {
    if (!known.has(one.point)) say(one.fact, `Recorded at point ${one.point}, which the plan does not have.`)
    for (const line of refusedLines(one.record)) say(one.fact, line)
    if (one.overruledBy !== null) say(one.fact, `Another record of ${showRecordType(one.record.type)} governs.`)
  }
  for (const attempt of points.flatMap((point) => point.attempts)) {
    for (const photo of attempt.photos)
      for (const flag of photo.flags)
        say(
          photo.fact,
          `Photo of point ${attempt.point}: ${flagText(photo, flag)}`,
          flag.kind === 'clock differs' ? 'clock' : 'photo',
        )
    for (const release of attempt.releases) {
      if (release.fell && release.state !== 'superseded')
        say(
          { id: release.fell.fact ?? release.fact.id, observedAt: release.fell.at },
          `Release of point ${attempt.point} by ${release.fact.body.party}, ${showMoment(release.fact.observedAt)}: ${release.state}. ${release.fell.cause}`,
        )
      if (release.receivedAfterUse)
        say(release.fact, `Release of point ${attempt.point} was received after the step that relied on it.`)
    }
    for (const passed of attempt.passedWithoutRelease)
      say(
        { id: passed.by, observedAt: passed.at },
        `Point ${attempt.point} begun without a release of point ${passed.hold} in force`,
      )
    for (const signature of attempt.signatures.filter((one) => one.state === 'broken'))
      say(
        signature.fact,
        `Signature of ${signature.fact.body.name} at point ${attempt.point} no longer covers what it signed.`,
      )
  }
  for (const one of conflicts) {
    const fact = ground.own.find((candidate) => candidate.id === one.facts.at(-1))
    if (fact)
      say(
        fact,
        `${one.text}${one.resolved ? `; decided: ${one.resolved.kind === 'conflict-settled' ? `${one.resolved.body.ruling}, ` : ''}${one.resolved.body.reason}` : ''}.`,
      )
  }
  list.push(...clockFaults(ground), ...copiedReadings(ground), ...hastyReadings(ground))
  return list.sort(
    (a, b) =>
      instantOf(a.at) - instantOf(b.at) ||
      (a.fact < b.fact ? -1 : a.fact > b.fact ? 1 : 0) ||
      (a.text < b.text ? -1 : 1),
  )
}

/** A text with one full stop at its end. */
function sentence(text: string): string {
  return `${text.replace(/[.\s]+$/, '')}.`
}

function ownText(ground: RepairGround, fact: Fact): string | null {
  switch (fact.kind) {
    case 'corrected':
      return correctedText(ground, fact)
    case 'event-noted':
      return `${EVENT_TEXT[fact.body.event]}${fact.body.area ? ` (${fact.body.area})` : ''}: ${fact.body.remark}`
    case 'photo-judged':
      return fact.body.decision === 'not accepted' ? `Photo not accepted: ${fact.body.reason}.` : null
    case 'photo-disagrees':
      return `Photo shows ${fact.body.shows}, the record says otherwise: ${fact.body.reason}.`
    case 'release-refused':
      return `Release of point ${fact.body.point} refused: ${fact.body.reason}.`
    case 'stands-or-redo':
      return `Point ${fact.body.point} after revision ${fact.body.revision}: ${fact.body.decision}. ${fact.body.reason}.`
    case 'repair-held':
      return `${fact.body.state.charAt(0).toUpperCase()}${fact.body.state.slice(1)}: ${fact.body.reason}.`
    case 'waived':
      return `${fact.body.party} gave up its right at point ${fact.body.point}: ${fact.body.writing}.`
    case 'disposed':
      return `Bytes disposed of: ${fact.body.why}.`
    case 'recorded':
      return fact.body.record.type === 'stop'
        ? `${fact.body.record.what === 'stopped' ? 'Stopped' : 'Resumed'}: ${fact.body.record.reason}.`
        : null
    case 'signed':
      return signedOfflineText(fact)
    case 'transcription-checked':
      return `Transcription at point ${fact.body.point} compared with its paper by ${personName(ground, fact.observedBy)}: ${fact.body.result}${fact.body.remark ? `, ${fact.body.remark}` : ''}.`
    default:
      return null
  }
}

/** A signature that was made where there was no network; null for any other. */
function signedOfflineText(fact: FactOf<'signed'>): string | null {
  const { method, name, meaning, point } = fact.body
  const proof = 'proof' in method ? method.proof : undefined
  return proof?.offline
    ? `Signed "${meaning}" by ${name} at point ${point} without a network, with the key of ${fact.device.id} behind a PIN.`
    : null
}

function transcribedText(ground: RepairGround, fact: FactOf<'recorded'>): string | null {
  const copy = ground.records.find((one) => one.fact.id === fact.id)
  const state = copy ? transcriptionState(copy, ground.own) : null
  if (!state) return null
  const nameOf = (person: PersonId) => personName(ground, person)
  return `At point ${fact.body.point}, observed by ${nameOf(fact.observedBy)}, entered ${showMoment(fact.enteredAt)} by ${nameOf(fact.enteredBy)}, ${transcriptionWords(state, nameOf)}.`
}

/** What is doubtful about a photo. Of two equal ones the later use is in doubt; it counts until a person decides. */
function flagText({ fact }: PhotoState, { kind, other, decision }: PhotoFlag): string {
  if (!other) return kind
  const isLater = other.fact < fact.id
  const decided = decision ? `decided: ${decision.body.decision}` : 'not yet decided'
  return `${kind} of ${isLater ? 'an earlier' : 'a later'} one at ${other.repair.slice(7)}, point ${other.point}${isLater || decision ? `; ${decided}` : ''}`
}

function correctedText(ground: RepairGround, fact: FactOf<'corrected'>): string {
  const target = ground.records.find((one) => one.fact.id === fact.body.target)
  const where = target ? ` at point ${target.point} attempt ${target.attempt}` : ''
  const names = {
    personName: (person: string) => personName(ground, person as PersonId),
    streamTitle: (stream: string) => stream.slice(stream.indexOf(':') + 1),
  }
  const changes = fact.body.changes.map((one) => correctionWords(target?.record ?? null, one, names).phrase)
  return `Corrected by ${personName(ground, fact.observedBy)}${where}: ${changes.join('; ')} (${fact.body.reason.replace(/[.\s]+$/, '')})`
}

function unappliedText(ground: RepairGround, { fact, why, path }: UnappliedCorrection): string {
  const reason = {
    'from-differs': 'the value it replaces is not the present one',
    'path-missing': 'there is no such field',
    'not-a-record': 'the result would be no record',
    'target-missing': 'it corrects no record of this repair',
  }[why]
  return `A correction by ${personName(ground, fact.observedBy)} was not applied${path ? ` at ${path}` : ''}: ${reason}.`
}

function refusedLines(record: PointState['current']['records'][number]['record']): string[] {
  if (record.type === 'materials')
    return record.lines
      .filter((one) => one.decision === 'refused')
      .map((one) => `Batch ${one.batch.slice(6)} refused: ${one.reason ?? 'no reason given'}.`)
  if (record.type === 'instruments')
    return record.instruments
      .filter((one) => one.decision === 'refused')
      .map((one) => `Instrument ${one.instrument.slice(11)} refused: ${one.reason ?? 'no reason given'}.`)
  return []
}
