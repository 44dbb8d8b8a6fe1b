import Link from 'next/link'
import { ActFold } from '@/app/_desk/act-fold'
import { ActForm } from '@/app/_desk/act-form'
import { ImpactForm } from '@/app/_desk/impact-form'
import { mayAct, offsetOf } from '@/app/_desk/require-desk'
import { Glyph } from '@/app/_ui/glyph'
import { notifyOwnerAction } from '@/app/(work)/actions/batch-actions'
import { showMoment } from '@/lib/domain/time'
import type { ReadingDesk } from '@/lib/server/views/reading-desk'
import type { TraceBatchView, TracedRepair } from '@/lib/server/views/trace-batch-view'

/** The repairs that a batch went into: attempts, to whom a dossier went, and after a recall the decision per repair and the notices. */
export function TracedRepairs({
  reading,
  view,
  repairs,
}: {
  reading: ReadingDesk
  view: TraceBatchView
  repairs: readonly TracedRepair[]
}) {
  if (repairs.length === 0) return null
  const mayDecide = view.recall !== null && mayAct(reading, 'decide impact')
  const mayNotify = view.recall !== null && mayAct(reading, 'recall')
  return (
    <section className="stack" aria-label="Repairs">
      {repairs.map((one) => (
        <article className="sheet" key={one.repair}>
          <div className="sheet-head">
            <h2>
              <Link href={`/repairs/${one.number}`}>{one.number}</Link> <span className="quiet">{one.line}</span>
            </h2>
            <span>
              {one.status}
              {one.registerNo ? `, register ${one.registerNo}` : ''}
            </span>
          </div>
          <p>
            {attemptWords(one.attempts)}
            {one.isUsed ? '' : ': looked at, nothing of it used'}{' '}
            {one.isInQuestion ? (
              <span className="mark question">
                <Glyph name="question" />
                In question
              </span>
            ) : null}
          </p>
          {one.receivers.length > 0 ? (
            <p className="small quiet">
              Dossier went to {one.receivers.map((to) => `${to.to} (rev ${to.revision}, ${to.how})`).join('; ')}.
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
          {mayDecide && view.recall ? (
            <ActFold
              title={one.decisions.length === 0 ? `Decide for ${one.number}` : `Decide again for ${one.number}`}
              note="recorded even when it is no effect"
            >
              <ImpactForm
                stream={one.repair}
                cause={view.recall.fact}
                points={one.attempts.map((text) => ({ point: text.slice(0, 2), attempt: Number(text.slice(3)) }))}
              />
            </ActFold>
          ) : null}
          {mayNotify && view.recall ? (
            <ActFold title={`Record notice to the owner of ${one.number}`}>
              <ActForm
                action={notifyOwnerAction}
                kind="owner-notified"
                stream={view.batch}
                settled={{ cause: view.recall.fact, repair: one.repair }}
                utcOffset={offsetOf(reading)}
                submit="Record the notice"
                done="Recorded."
                fields={[
                  { kind: 'text', name: 'to', label: 'To whom' },
                  { kind: 'text', name: 'how', label: 'How', hint: 'Such as letter, e-mail reference' },
                ]}
              />
            </ActFold>
          ) : null}
        </article>
      ))}
    </section>
  )
}

/** `14/1` and `03/1` in words: points by attempt. */
function attemptWords(attempts: readonly string[]): string {
  if (attempts.length === 0) return 'no use on record'
  const byAttempt = new Map<string, string[]>()
  for (const text of attempts) {
    const [point = '', attempt = ''] = text.split('/')
    byAttempt.set(attempt, [...(byAttempt.get(attempt) ?? []), point])
  }
  return [...byAttempt]
    .map(([attempt, points]) => `attempt ${attempt}, ${points.length === 1 ? 'point' : 'points'} ${points.join(', ')}`)
    .join('; ')
}
