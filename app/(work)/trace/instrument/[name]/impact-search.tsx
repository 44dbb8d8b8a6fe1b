import Link from 'next/link'
import { ActFold } from '@/app/_desk/act-fold'
import { ImpactForm } from '@/app/_desk/impact-form'
import { onlyReadable } from '@/app/_desk/readable-repairs'
import { mayAct, pathOf } from '@/app/_desk/require-desk'
import { Glyph } from '@/app/_ui/glyph'
import { VerdictMark } from '@/app/_ui/verdict-mark'
import type { StreamId } from '@/lib/domain/facts/fact'
import type { VerdictKind } from '@/lib/domain/judge/verdict'
import { showMoment } from '@/lib/domain/time'
import type { ReadingDesk } from '@/lib/server/views/reading-desk'
import type { ImpactAttempt, ImpactRepair, ImpactView } from '@/lib/server/views/trace-impact-view'

/** What a later-found fault of an instrument reaches: from the last good full check on, repair by repair, with the decision for each. */
export async function ImpactSearch({
  reading,
  stream,
  impact,
  causes,
}: {
  reading: ReadingDesk
  stream: StreamId
  impact: ImpactView
  causes: readonly { fact: string; at: string; words: string }[]
}) {
  const repairs = await onlyReadable(reading, impact.repairs)
  const checked = await onlyReadable(reading, impact.checkedOnly)
  const open = repairs.shown.filter((one) => one.decisions.length === 0)
  return (
    <section className="stack" aria-label="Impact search">
      <div className="note question-note">
        <strong>
          Found wrong on {showMoment(impact.at)}: {impact.words}
        </strong>
        <span>
          Searched from{' '}
          {impact.since
            ? `the last good full check, ${showMoment(impact.since)}`
            : 'the first reading: no good full check is on record'}
          , to {showMoment(impact.until)}. {repairs.shown.length} {repairs.shown.length === 1 ? 'repair' : 'repairs'}{' '}
          reached, {open.length} still to decide.
        </span>
        {causes.length > 1 ? (
          <span className="row-links">
            {causes
              .filter((one) => one.fact !== impact.cause)
              .map((one) => (
                <Link key={one.fact} href={`${pathOf('trace/instrument', stream)}?impact=${one.fact}`}>
                  Also {showMoment(one.at)}: {one.words}
                </Link>
              ))}
          </span>
        ) : null}
      </div>
      {repairs.shown.map((one) => (
        <ReachedRepair key={one.repair} reading={reading} one={one} cause={impact.cause} />
      ))}
      {checked.shown.length > 0 ? <h2>Taken along or checked there, no result rests on it</h2> : null}
      {checked.shown.map((one) => (
        <ReachedRepair key={one.repair} reading={reading} one={one} cause={impact.cause} />
      ))}
      {repairs.hiddenCount > 0 ? (
        <p className="note">
          <strong>
            {repairs.hiddenCount} more {repairs.hiddenCount === 1 ? 'repair' : 'repairs'}
          </strong>{' '}
          <span>in projects where you hold no role.</span>
        </p>
      ) : null}
    </section>
  )
}

function ReachedRepair({ reading, one, cause }: { reading: ReadingDesk; one: ImpactRepair; cause: string }) {
  return (
    <article className="sheet">
      <div className="sheet-head">
        <h2>
          <Link href={`/repairs/${one.number}`}>{one.number}</Link> <span className="quiet">{one.line}</span>
        </h2>
        <span>{one.status}</span>
      </div>
      <ul className="plain-list">
        {one.attempts.map((attempt) => (
          <AttemptLine key={`${attempt.point}${attempt.attempt}`} number={one.number} attempt={attempt} />
        ))}
      </ul>
      {one.receivers.length > 0 ? (
        <p className="small quiet">
          Dossier went to {one.receivers.map((to) => `${to.to} (rev ${to.revision})`).join('; ')}.
        </p>
      ) : null}
      {one.decisions.map((decision) => (
        <p key={decision.at} className="note">
          <strong>Decided: {decision.decision}.</strong>{' '}
          <span>
            {decision.reason} ({decision.by}, {showMoment(decision.at)})
          </span>
        </p>
      ))}
      {mayAct(reading, 'decide impact') ? (
        <ActFold
          title={one.decisions.length === 0 ? `Decide for ${one.number}` : `Decide again for ${one.number}`}
          note="recorded even when it is no effect"
        >
          <ImpactForm stream={one.repair} cause={cause} points={one.settles} />
        </ActFold>
      ) : null}
    </article>
  )
}

function AttemptLine({ number, attempt }: { number: string; attempt: ImpactAttempt }) {
  return (
    <li>
      <div className="row between">
        <Link href={`/repairs/${number}/points/${attempt.point}?attempt=${attempt.attempt}`}>
          {attempt.point} {attempt.pointTitle}, attempt {attempt.attempt}
        </Link>
        {attempt.isInQuestion ? (
          <span className="mark question">
            <Glyph name="question" />
            In question
          </span>
        ) : (
          <span className="quiet">{attempt.state}</span>
        )}
      </div>
      {attempt.lines.map((line) => (
        <p key={line.title} className="small">
          {line.title}: as read {line.found}
          {line.corrected ? (
            <>
              ; with the error taken off {line.corrected},{' '}
              {line.correctedVerdict ? <VerdictMark verdict={line.correctedVerdict as VerdictKind} /> : null}
            </>
          ) : null}
        </p>
      ))}
      <span className="quiet small">{showMoment(attempt.at)}</span>
    </li>
  )
}
