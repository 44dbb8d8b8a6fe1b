import { RefusalBox, type RefusalWords, type ShownRefusal, wordsOf } from '@/app/_ui/refusal-note'

/** A refusal of the server or of this device in words. */
export function OutboxRefusal({ refusal }: { refusal: { code: string; [fact: string]: unknown } }) {
  return <RefusalBox words={outboxWords(refusal)} />
}

/** Words for what a device or an exchange may refuse; all else has the words of the record's own refusals. */
export function outboxWords(refusal: { code: string; [fact: string]: unknown }): RefusalWords {
  switch (refusal.code) {
    case 'storage-full':
      return {
        title: 'The storage of this device is full.',
        lines: ['It was not kept. Free some storage, or go where there is a network and send what waits.'],
      }
    case 'storage-nearly-full':
      return {
        title: 'Too little storage is left on this device.',
        lines: [
          `${megabytes(refusal.neededBytes)} are needed and ${megabytes(refusal.freeBytes)} are free. It was not kept, so that nothing kept is lost.`,
        ],
      }
    case 'storage-refused':
      return {
        title: 'This browser gives no storage.',
        lines: ['A private window or a policy stops it. Open an ordinary window.'],
      }
    case 'key-not-here':
      return {
        title: 'That person has no key on this device.',
        lines: ['Set up signing on this device again, with a network.'],
      }
    case 'pin-wrong':
      return {
        title: 'The PIN is not right.',
        lines: [
          `Nothing was signed. ${String(refusal.triesLeft)} ${refusal.triesLeft === 1 ? 'try is' : 'tries are'} left; the last wrong one destroys the key.`,
        ],
      }
    case 'key-destroyed':
      return {
        title: 'The key was destroyed.',
        lines: [
          'The PIN was wrong too often. What the key signed stays signed. Set up a new key with a network, and end the old one in the record.',
        ],
      }
    case 'photo-lost':
      return {
        title: 'The photo is no longer on this device.',
        lines: ['Its bytes were cleared before they were sent. Take it again, then set this one aside.'],
      }
    case 'pack-malformed':
      return {
        title: 'This device has an older Underwrap than the server.',
        lines: ['Close every window of it, open it again with a network, then take the repair along.'],
      }
    case 'number-used':
      return {
        title: `${String(refusal.number)} was used meanwhile.`,
        lines: ['Another window of this device opened a repair under it. Choose another number of this device.'],
      }
    case 'other-person':
      return { title: 'Another person is signed in.', lines: ['Open a page of the record once, then try again.'] }
    case 'not-refused':
      return { title: 'This entry was dealt with meanwhile.', lines: ['Look at the list again.'] }
    case 'reason-missing':
      return { title: 'The reason is missing.', lines: ['Say why it is set aside.'] }
    case 'piece-misplaced':
    case 'pieces-full':
      return { title: 'The server has no room for the photo now.', lines: ['Try again later.'] }
    case 'passphrase-short':
      return { title: 'The passphrase is too short.', lines: [`At least ${String(refusal.lengthMin)} characters.`] }
    case 'nothing-open':
      return { title: 'Nothing waits on this device.', lines: ['There is nothing to write into a file.'] }
    case 'passphrase-wrong':
      return {
        title: 'The file does not open.',
        lines: ['The passphrase is not the one it was written with, or the file was changed.'],
      }
    default:
      return (
        wordsOf(refusal as ShownRefusal) ?? {
          title: 'The server refused it.',
          lines: [refusal.code.replaceAll('-', ' ')],
        }
      )
  }
}

function megabytes(bytes: unknown): string {
  return typeof bytes === 'number' ? `${Math.ceil(bytes / 1_000_000)} MB` : 'some MB'
}
