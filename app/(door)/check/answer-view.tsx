'use client'
import { Glyph, type GlyphName } from '@/app/_ui/glyph'
import type { About, Answer } from '@/lib/verify/answer'
import { answerWords } from '@/lib/verify/answer-words'

type Tone = 'pass' | 'fail' | 'not-proven'
const GLYPHS: Readonly<Record<Tone, GlyphName>> = { pass: 'pass', fail: 'fail', 'not-proven': 'not proven' }

/** An answer: first the three things that anyone wants to know, then all that was proved, was not, and does not hold. */
export function AnswerView({ answer }: { answer: Answer }) {
  const words = answerWords(answer)
  const { about, breaks, proved, notProved } = answer
  return (
    <section className="check-answer" aria-labelledby="check-answer-title" data-answer={answer.answer}>
      <h2 id="check-answer-title" className="visually-hidden">
        Answer
      </h2>
      {words.subject && <p className="check-subject">{words.subject}</p>}
      <dl className="check-three">
        <Part question="Is it whole?" text={words.whole} tone={WHOLE[answer.answer]} />
        <Part question="Whose is it?" text={words.whose} tone={WHOSE[answer.signer]} />
        {words.verdicts && (
          <Part question="Do the verdicts follow?" text={words.verdicts} tone={toneOfVerdicts(answer)} />
        )}
      </dl>
      {breaks.length > 0 && (
        <div className="sheet check-list broken">
          <h3>{answer.answer === 'unreadable' ? 'Why it cannot be read' : 'What does not hold'}</h3>
          <ul>
            {breaks.map((one) => (
              <li key={`${one.code} ${one.place}`}>
                {one.text}
                <span className="check-place">
                  {one.place} · {one.code}
                </span>
              </li>
            ))}
          </ul>
        </div>
      )}
      <div className="check-columns">
        <Statements title="Proved" list={proved} />
        <Statements title="Not proved" list={notProved} />
      </div>
      {about && <Claims about={about} />}
    </section>
  )
}

const WHOLE: Readonly<Record<Answer['answer'], Tone>> = { intact: 'pass', broken: 'fail', unreadable: 'not-proven' }
const WHOSE: Readonly<Record<Answer['signer'], Tone>> = { known: 'pass', other: 'fail', 'not known': 'not-proven' }

/** In a broken file nothing is green: its readings may be others than were taken. */
function toneOfVerdicts({ answer, verdicts: { agreed, total } }: Answer): Tone {
  if (answer === 'broken') return agreed < total ? 'fail' : 'not-proven'
  return agreed === total && total > 0 ? 'pass' : 'not-proven'
}

function Part({ question, text, tone }: { question: string; text: string; tone: Tone }) {
  return (
    <div className={`sheet check-part ${tone}`}>
      <dt>{question}</dt>
      <dd>
        <Glyph name={GLYPHS[tone]} />
        <span>{text}</span>
      </dd>
    </div>
  )
}

function Statements({ title, list }: { title: string; list: Answer['proved'] }) {
  if (list.length === 0) return null
  return (
    <div className="sheet check-list">
      <h3>{title}</h3>
      <ul>
        {list.map((one) => (
          <li key={one.code}>{one.text}</li>
        ))}
      </ul>
    </div>
  )
}

/** Digits to compare by eye, and where the log stands. */
function Claims({ about }: { about: About }) {
  const rows: [string, string | null][] = [
    ['Head of the log', `${about.shortDigest} (${about.logSize} facts)`],
    ['Certificate', about.certificate?.subject ?? null],
    ['Fingerprint, SHA-256', about.certificate?.sha256.replace(/(.{4})(?=.)/g, '$1 ') ?? null],
    ['Log key', about.vkey],
    ['Time stamp', about.stampedAt],
  ]
  return (
    <div className="sheet check-list">
      <h3>To compare with what the holder tells you</h3>
      <dl className="check-claims">
        {rows.map(
          ([title, text]) =>
            text && (
              <div key={title}>
                <dt>{title}</dt>
                <dd className="digest">{text}</dd>
              </div>
            ),
        )}
      </dl>
    </div>
  )
}
