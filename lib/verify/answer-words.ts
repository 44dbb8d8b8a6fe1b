import type { About, Answer } from './answer'

/** The three things a reader wants to know first, each in one or two plain sentences: is it whole, whose is it, do the verdicts follow. */
export type AnswerWords = { whole: string; whose: string; verdicts: string | null; subject: string | null }

/** An answer in words for somebody who was never shown one before. */
export function answerWords(answer: Answer): AnswerWords {
  return {
    whole: wholeOf(answer),
    whose: whoseOf(answer),
    verdicts: verdictsOf(answer),
    subject: answer.about && subjectOf(answer.about),
  }
}

function wholeOf({ answer, breaks }: Answer): string {
  switch (answer) {
    case 'intact':
      return 'Intact: the file is whole and as it was signed.'
    case 'broken':
      return `Broken: ${breaks.length === 1 ? 'one thing does' : `${breaks.length} things do`} not hold. Do not rely on this file.`
    case 'unreadable':
      return 'Unreadable: this file cannot be checked.'
  }
}

function whoseOf({ answer, signer, about }: Answer): string {
  if (answer === 'unreadable') return 'Whose it is cannot be said.'
  switch (signer) {
    case 'known':
      return 'Signer known: what you gave leads to the signer of this file.'
    case 'other':
      return 'Other signer: what you gave does not lead to the signer of this file.'
    case 'not known':
      return answer === 'intact'
        ? `Signer not known to you${about?.organisation ? `: the file names ${about.organisation}, and anyone could write that` : ''}. Compare the fingerprint with the holder, or give their key or an earlier checkpoint.`
        : 'Whose it is cannot be said of a broken file.'
  }
}

function verdictsOf({ answer, verdicts, about, notProved }: Answer): string | null {
  if (answer === 'unreadable' || about?.kind === 'log export') return null
  if (notProved.some((one) => one.code === 'rules-unknown')) return 'Verdicts could not be recomputed.'
  const agreed = `Verdicts recomputed from the readings: ${verdicts.agreed} of ${verdicts.total} agree`
  return answer === 'broken' ? `${agreed}, in a file that is broken.` : `${agreed}.`
}

function subjectOf(about: About): string {
  const demo = about.isDemo ? ' These are invented records of a demonstration.' : ''
  if (about.kind === 'log export') return `Log export of ${about.factCount} facts, ${about.origin}.${demo}`
  const number = about.repair?.slice('repair:'.length) ?? ''
  const what = about.kind === 'issue' ? `revision ${about.revision}, ${about.purpose}` : 'copy for review'
  return `Dossier of repair ${number}, ${what}, as of ${about.asOf}.${demo}`
}
