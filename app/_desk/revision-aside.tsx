import Link from 'next/link'
import type { Act } from '@/lib/server/commands/authorise'
import { personChoices } from '@/lib/server/views/person-list-view'
import type { ReadingDesk } from '@/lib/server/views/reading-desk'
import type { RevisionLine } from '@/lib/server/views/specification-view'
import { ActFold } from './act-fold'
import { mayAct } from './require-desk'
import { SecondForm } from './second-form'
import type { SendAnswer } from './use-sending'

type Shown = {
  stream: string
  length: number
  shown: 'draft' | number
  inForce: number | null
  nextRevision: number
  revisions: readonly RevisionLine[]
  draft: unknown
}
const ISSUE: Act = 'issue specification or plan'

/** Revisions of a specification or plan, and what the reader may do: edit a draft, issue it. */
export async function RevisionAside({
  reading,
  view,
  path,
  action,
  cycle,
}: {
  reading: ReadingDesk
  view: Shown
  path: string
  action: (input: unknown) => Promise<SendAnswer>
  cycle?: readonly string[] | null
}) {
  const roles = reading.roles
  const alone = roles.includes('client') || roles.includes('engineer')
  const mayIssue =
    mayAct(reading, ISSUE) && (alone || reading.actor.approvesOn('any', reading.desk.today(null), 'inspector'))
  return (
    <aside className="stack">
      <section className="sheet">
        <h2>Revisions</h2>
        <ul className="plain-list">
          {view.draft ? (
            <li>
              <Link
                className="row-link"
                href={`${path}?rev=draft`}
                aria-current={view.shown === 'draft' ? 'page' : undefined}
              >
                Draft of rev {view.nextRevision}
              </Link>
              <br />
              <span className="quiet small">no limit in force</span>
            </li>
          ) : null}
          {[...view.revisions].reverse().map((one) => (
            <li key={one.revision}>
              <Link
                className="row-link"
                href={`${path}?rev=${one.revision}`}
                aria-current={view.shown === one.revision ? 'page' : undefined}
              >
                Rev {one.revision}
              </Link>
              {one.revision === view.inForce ? <strong> in force</strong> : null}
              <br />
              <span className="small">
                {one.issuedOn}: {one.changes}
              </span>
              <br />
              <span className="quiet small">
                approved by {one.approvedBy}
                {one.second ? `, with ${one.second}` : ''}
              </span>
            </li>
          ))}
        </ul>
        {view.revisions.length === 0 && !view.draft ? <p className="quiet">Nothing is issued yet.</p> : null}
      </section>
      <section className="acts" aria-label="Acts">
        {mayAct(reading, 'draft specification or plan') ? (
          <p style={{ marginBottom: 12 }}>
            <Link className="button" href={`${path}/draft`}>
              {view.draft ? 'Edit the draft' : `Draft rev ${view.nextRevision}`}
            </Link>
          </p>
        ) : null}
        {view.draft && cycle ? (
          <p className="note refused" role="alert">
            <strong>The blocks form a circle: {cycle.join(' → ')}.</strong>{' '}
            <span>No point of it could ever open. Take one block away before it is issued.</span>
          </p>
        ) : null}
        {view.draft && mayIssue && !cycle ? (
          <ActFold
            title={`Issue rev ${view.nextRevision}`}
            note={alone ? 'it is never changed again' : 'with a second person; it is never changed again'}
            open={view.shown === 'draft'}
          >
            <SecondForm
              action={action}
              stream={view.stream}
              word="changes"
              label="What changed, and why"
              submit={`Issue rev ${view.nextRevision}`}
              done="Issued. It is in force from its day."
              needsSecond={!alone}
              persons={alone ? [] : await personChoices(reading, reading.actor.person)}
              heads={[{ stream: view.stream, length: view.length }]}
              more={{ name: 'issuedOn', label: 'In force from', value: reading.desk.today(null) }}
            />
          </ActFold>
        ) : null}
        {view.draft && !mayIssue ? (
          <p className="note">
            <strong>
              Issuing takes the client, the engineer, or an inspector with the right to approve and a second person.
            </strong>
          </p>
        ) : null}
      </section>
    </aside>
  )
}
