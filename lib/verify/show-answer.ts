import { STANDING_CAUTION } from '@/lib/domain/caution'
import type { Answer } from './answer'
import { answerWords } from './answer-words'

/** An answer as lines of text for a terminal. */
export function showAnswer(answer: Answer): string {
  const { whole, whose, verdicts, subject } = answerWords(answer)
  const { about, proved, notProved, breaks } = answer
  return [
    whole,
    whose,
    ...(verdicts ? [verdicts] : []),
    ...(subject ? ['', subject] : []),
    ...(about
      ? [
          `Head of the log: ${about.shortDigest} (${about.logSize} facts)`,
          ...(about.certificate
            ? [`Certificate: ${about.certificate.subject}`, `  SHA-256 ${about.certificate.sha256}`]
            : []),
          `Log key: ${about.vkey}`,
        ]
      : []),
    ...section(
      'Breaks',
      breaks.map((one) => `${one.text} [${one.code}] ${one.place}`),
    ),
    ...section(
      'Proved',
      proved.map((one) => one.text),
    ),
    ...section(
      'Not proved',
      notProved.map((one) => one.text),
    ),
    '',
    STANDING_CAUTION,
  ]
    .map(plain)
    .join('\n')
}

function section(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', title, ...lines.map((line) => `- ${line}`)]
}

/** Names come from the file: nothing that a terminal would obey may pass. */
function plain(line: string): string {
  return line.replace(/\p{Cc}|\p{Cf}/gu, '?')
}
