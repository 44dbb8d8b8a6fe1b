import Link from 'next/link'
import { showMoment } from '@/lib/domain/time'
import type { RepairView } from '@/lib/server/views/repair-view'

/** What else a person must know of a repair: nonconformances, what is missing, conflicts, notices, and what is remarkable. */
export function RepairSide({ view }: { view: RepairView }) {
  const { state, names } = view
  return (
    <>
      {state.conflicts
        .filter((one) => !one.resolved)
        .map((conflict) => (
          <div key={conflict.noted ?? conflict.facts.join()} className="note question-note">
            <strong>
              {conflict.noted
                ? `A decision made without a network waits for a ruling at point ${conflict.point}.`
                : `Two records contradict each other at point ${conflict.point}.`}
            </strong>
            <span>{conflict.text}</span>
            <Link href={`/repairs/${state.number}/points/${conflict.point}`}>
              {conflict.noted ? 'Rule on it' : 'Choose which governs'}
            </Link>
          </div>
        ))}
      {state.nonconformances.length > 0 ? (
        <section className="sheet">
          <h2>Nonconformances</h2>
          <ul className="plain-list">
            {state.nonconformances.map((one) => (
              <li key={one.number}>
                <Link href={`/nonconformances/${one.number}`}>{one.number}</Link> {one.raised.body.title}
                <br />
                <span className="quiet small">
                  {one.state}
                  {one.blocksAcceptance ? ', blocks acceptance' : ''}
                </span>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      <section className="sheet">
        <div className="sheet-head">
          <h2>Missing</h2>
          <span className="quiet">{state.missing.length}</span>
        </div>
        {state.missing.length === 0 ? (
          <p className="quiet">Nothing is missing against the plan.</p>
        ) : (
          <details open={state.missing.length <= 8}>
            <summary className="fold-head plain">What the plan still asks for</summary>
            <ul className="plain-list">
              {state.missing.map((one) => (
                <li key={`${one.point}${one.text}`}>
                  {one.point ? <Link href={`/repairs/${state.number}/points/${one.point}`}>{one.point}</Link> : null}{' '}
                  {one.text}
                </li>
              ))}
            </ul>
          </details>
        )}
      </section>
      <section className="sheet">
        <div className="sheet-head">
          <h2>Late, corrected, withdrawn</h2>
          <Link href={`/repairs/${state.number}/trail`}>Whole trail</Link>
        </div>
        {state.remarkable.length === 0 ? (
          <p className="quiet">No late entry, correction, clock fault or withdrawn release.</p>
        ) : (
          <ul className="plain-list">
            {state.remarkable.slice(0, 6).map((one) => (
              <li key={`${one.fact}${one.text}`}>
                {one.text}
                <br />
                <span className="quiet small">{showMoment(one.at)}</span>
              </li>
            ))}
          </ul>
        )}
        {state.remarkable.length > 6 ? (
          <p className="quiet small">and {state.remarkable.length - 6} more in the trail</p>
        ) : null}
      </section>
      <section className="sheet">
        <h2>More of this repair</h2>
        <ul className="plain-list">
          <li>
            <Link className="link-row" href={`/trace/repair/${state.number}`}>
              Batches, instruments and persons in it
            </Link>
          </li>
          <li>
            <Link className="link-row" href={`/repairs/${state.number}/notices`}>
              Notices and waivers{state.notices.length > 0 ? ` (${state.notices.length})` : ''}
            </Link>
          </li>
          <li>
            <Link className="link-row" href={`/repairs/${state.number}/accept`}>
              Final acceptance
            </Link>
          </li>
        </ul>
        {state.acceptance ? (
          <p className="quiet small" style={{ marginTop: 8 }}>
            {state.acceptance.fact.body.kind} {showMoment(state.acceptance.fact.observedAt)} by{' '}
            {names[state.acceptance.fact.observedBy] ?? state.acceptance.fact.observedBy}; life ends{' '}
            {state.acceptance.lifeEndsOn}
          </p>
        ) : null}
      </section>
    </>
  )
}
