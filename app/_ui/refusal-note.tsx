import { showMoment } from '@/lib/domain/time'
import type { Refusal } from '@/lib/server/commands/refusal'
import { notDecidedWords } from './barrier-words'

export type ShownRefusal = Refusal | { code: 'no-answer' } | { code: 'nothing-changed' }

/** A refusal in words: what, where and what to do. The codes carry the facts; the sentences are made here alone. */
export function RefusalNote({ refusal }: { refusal: ShownRefusal }) {
  return <RefusalBox words={wordsOf(refusal)} />
}

export type RefusalWords = { title: string; lines: string[] }

/** A refusal's title and what to do about it. */
export function RefusalBox({ words: { title, lines } }: { words: RefusalWords }) {
  return (
    <div className="note refused" role="alert">
      <strong>{title}</strong>
      {lines.map((line) => (
        <span key={line}>{line}</span>
      ))}
    </div>
  )
}

/** The words of a refusal: a title and what to do. */
export function wordsOf(refusal: ShownRefusal): RefusalWords {
  switch (refusal.code) {
    case 'no-answer':
      return {
        title: 'The server did not answer.',
        lines: ['What you keyed stays on this device. Save again when there is a connection.'],
      }
    case 'nothing-changed':
      return { title: 'Nothing was changed.', lines: ['A correction needs at least one changed value.'] }
    case 'invalid':
      return {
        title: 'Some of it cannot be read.',
        lines: Object.entries(refusal.fields).map(([field, problems]) => `${field}: ${problems.join('; ')}`),
      }
    case 'not-signed-in':
      return { title: 'You are signed out.', lines: ['Sign in again; what you keyed stays on this device.'] }
    case 'not-found':
      return { title: 'It is not there.', lines: ['Nothing of that name is in your record.'] }
    case 'not-allowed':
      return {
        title: 'Your role may not do this.',
        lines: [refusal.needs.length > 0 ? `It is for: ${refusal.needs.join(', ')}.` : 'Nobody may do this directly.'],
      }
    case 'not-own-role':
      return { title: 'You cannot give yourself a role.', lines: ['Another administrator must do it.'] }
    case 'not-own-entry':
      return {
        title: 'This is another person’s entry.',
        lines: ['Only who entered it may correct it. Add a remark, or ask them.'],
      }
    case 'second-person-missing':
      return { title: 'This needs a second person.', lines: ['Name the one who agrees; it cannot be yourself.'] }
    case 'exists-already':
      return {
        title: 'That name is taken.',
        lines: [`${refusal.stream.replace(':', ' ')} is there already. Numbers are never used again.`],
      }
    case 'number-allotted-elsewhere':
      return {
        title: `${refusal.number} belongs to another device.`,
        lines: [
          `${refusal.from} to ${refusal.to} are allotted to a device that may be using them without a network. Take another number; one that is chalked on a pipe already is settled with who holds that device.`,
        ],
      }
    case 'heads-moved':
      return {
        title: 'The record moved while you looked.',
        lines: [
          'Somebody added to it. Look at what is new, then decide again.',
          ...refusal.moved.map((one) => `${one.stream.replace(':', ' ')}: ${one.now - one.seen} new`),
        ],
      }
    case 'id-taken':
      return { title: 'This was sent before with other content.', lines: ['Save it anew.'] }
    case 'late-reason-missing':
      return {
        title: 'This is a late entry.',
        lines: [`It was observed ${refusal.minutesLate} minutes before now: say why it is entered late.`],
      }
    case 'entered-in-future':
      return { title: 'The time lies ahead of the server’s clock.', lines: ['Check the clock of this device.'] }
    case 'value-moved':
      return {
        title: 'The value was corrected meanwhile.',
        lines: [`At ${refusal.path}: open it again to see the present value.`],
      }
    case 'observer-not-allowed':
      return {
        title: 'That person could not record this then.',
        lines: [
          `On ${refusal.day} they held none of: ${refusal.needs.join(', ')}. Choose the name on the paper, or correct the day.`,
        ],
      }
    case 'scan-missing':
      return { title: 'The scan of the paper is missing.', lines: ['Attach it again, then save.'] }
    case 'own-transcription':
      return {
        title: 'This needs a second person.',
        lines: ['You entered or corrected it. Another person compares it with the paper.'],
      }
    case 'no-such-attempt':
      return { title: 'There is no such attempt.', lines: ['Open the attempt first.'] }
    case 'not-decided':
      return { title: 'This cannot be decided so.', lines: notDecidedWords(refusal.why, refusal.detail) }
    case 'password-wrong':
      return {
        title: 'The password is not right.',
        lines: ['Nothing was signed. Check who is signing, then try again.'],
      }
    case 'too-many-tries':
      return { title: 'Too many tries.', lines: [`Wait ${refusal.retryAfterSeconds} seconds, then try again.`] }
    case 'signer-unknown':
      return { title: 'The signer is not known here.', lines: ['Choose who is signing.'] }
    case 'signer-has-account':
      return { title: 'That person has an account.', lines: ['They sign with their own password.'] }
    case 'witness-is-signer':
      return { title: 'Nobody witnesses their own signature.', lines: [] }
    case 'meaning-not-for-role':
      return {
        title: `“${refusal.meaning}” is not for the role ${refusal.role}.`,
        lines: ['Choose another meaning or another signer.'],
      }
    case 'key-unknown':
      return {
        title: 'This device signs nothing for that person.',
        lines: ['Its key is not in the record as theirs. Set up signing on this device again, with a network.'],
      }
    case 'key-ended':
      return {
        title: 'The key of this device was ended.',
        lines: [
          `Since ${showMoment(refusal.endedAt)} it signs nothing. Sign again before the server, or set up a new key.`,
        ],
      }
    case 'key-proof-wrong':
      return {
        title: 'The signature is not the key’s.',
        lines: ['What was signed and what was sent are not the same. Sign again.'],
      }
    case 'covers-differ':
      return {
        title: 'What was signed is not in the record so.',
        lines: [
          `${refusal.facts.length} of the entries signed were refused, changed or not received. Deal with those, then sign again.`,
        ],
      }
    case 'decision-misdated':
      return {
        title: 'The decision bears a time that it cannot have.',
        lines: [
          `It says ${showMoment(refusal.decidedAt)}; what this device and the record know of is ${showMoment(refusal.notBefore)}. Check the clock of this device, then decide again.`,
        ],
      }
    case 'blocks-form-a-cycle':
      return {
        title: 'The blocks form a circle.',
        lines: [refusal.cycle.join(' → '), 'No point of it could ever open. Take one block away.'],
      }
    case 'draft-missing':
      return { title: 'There is no draft to issue.', lines: ['Save a draft first.'] }
    case 'photo-refused':
      return { title: 'The photo was refused.', lines: [refusal.reason.replaceAll('-', ' '), refusal.detail] }
  }
}
