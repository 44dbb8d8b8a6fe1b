import type { Comparison } from './compare-checkpoints'
import type { LogFault } from './read-log'

export type Told = { isGood: boolean; title: string; text: string }

const PLACE = {
  length: 'it is longer than a checkpoint can be',
  form: 'it has not the three lines, the empty line and the signature lines of one',
  origin: 'the first line is no origin',
  size: 'the second line is no size',
  root: 'the third line is no root of 32 bytes',
  signature: 'a signature line has not the form',
} as const

/** What a comparison found, in words: a heading and what follows from it. */
export function comparisonWords(found: Comparison): Told {
  const good = (title: string, text: string): Told => ({ isGood: true, title, text })
  const bad = (title: string, text: string): Told => ({ isGood: false, title, text })
  switch (found.code) {
    case 'contained':
      return good(
        'The log still contains all that you saw.',
        `Its first ${found.fromSize} facts are those of your checkpoint, unchanged and in the same order; ${found.size - found.fromSize} came after. Signature of key ${found.keyId} and the proof of consistency were checked in this browser.`,
      )
    case 'same':
      return good(
        'The log is exactly as you saw it.',
        `${found.size} facts then and now, with the same root. The signature of key ${found.keyId} was checked in this browser.`,
      )
    case 'malformed':
      return bad(
        'This is not a checkpoint.',
        `As a checkpoint it is refused: ${PLACE[found.at]}. Nothing was compared.`,
      )
    case 'other-log':
      return bad(
        'This checkpoint is of another log.',
        `It names ${found.theirs}; this log is ${found.ours}. A restored or re-made store keeps its origin, so another origin is another store or another organisation.`,
      )
    case 'not-ours':
      return bad(
        'The signature is not this log’s.',
        'No key that this log ever took, or none that your key vouches for, signed these lines. Either the text was changed or somebody else signed it. Nothing was compared.',
      )
    case 'key-out-of-turn':
      return bad(
        'Signed by a key of this log, but not by the one in force at that size.',
        `Key ${found.keyId} signed; at that size it had to be ${found.rightKeyId}. Ask how this checkpoint came about.`,
      )
    case 'set-back':
      return bad(
        'The log is shorter than what you saw.',
        `Your checkpoint counts ${found.fromSize} facts and the log now has ${found.size}: the store was set back to an earlier state, or facts were removed. At least ${found.fromSize - found.size} facts are gone.`,
      )
    case 'fork-same-size':
      return bad(
        'The log was forked: another root at the same size.',
        `Two signed heads over ${found.size} facts differ. What you saw is not what is shown now. Keep your checkpoint: it is the proof.`,
      )
    case 'fork':
      return bad(
        'The log does not contain what you saw.',
        `The proof from ${found.fromSize} to ${found.size} facts does not hold: a fact among your first ${found.fromSize} was changed, dropped or put in another place. Keep your checkpoint: it is the proof.`,
      )
    case 'no-proof':
      return bad('No proof came.', 'The server sent no readable proof of consistency. Nothing was shown: ask for one.')
    case 'held-key-unknown':
      return bad('Your key is not in this log.', 'The key line that you gave is none that this log ever took.')
    case 'held-key-ends':
      return bad(
        'Your key does not lead to the present one.',
        found.brokenAt === null
          ? 'A later key was taken without the endorsement of the one before it: trust in your key ends there. Ask for the reason and take over the new key by another way.'
          : `The change to key no. ${found.brokenAt} of this log does not hold.`,
      )
  }
}

/** What is wrong with what the server said of its own log. */
export function logFaultWords({ code }: LogFault): Told {
  const text = {
    'head-malformed': 'The head that the server sent is no checkpoint.',
    'key-not-in-log': 'A key that the server names is not in the tree of the head that it sent.',
    'head-not-signed': 'The head that the server sent is not signed by the log’s present key.',
    'keys-not-linked': 'The keys that the server names do not follow each other.',
  }[code]
  return { isGood: false, title: 'The server’s own account of its log does not hold.', text }
}
