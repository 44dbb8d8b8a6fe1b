import Link from 'next/link'
import { notFound } from 'next/navigation'
import { BarredNote } from '@/app/_desk/barred-note'
import { EventTrail } from '@/app/_desk/event-trail'
import { mayAct, mayReadStores, pathOf, requireDesk, streamAt } from '@/app/_desk/require-desk'
import { StandingMark } from '@/app/_desk/standing-mark'
import { loadPersonView } from '@/lib/server/views/person-view'
import { PersonActs } from './person-acts'
import { PersonKeys } from './person-keys'

export default async function PersonPage({ params }: { params: Promise<{ id: string }> }) {
  const reading = await requireDesk()
  const stream = streamAt('person', (await params).id)
  if (
    !mayReadStores(reading) &&
    !mayAct(reading, 'administer') &&
    reading.actor.person !== stream.slice('person:'.length)
  )
    return <BarredNote title="Person" forWhom="everyone with a role" />
  const view = await loadPersonView(reading, stream)
  if (!view) notFound()
  const { state } = view
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">{state.party}</p>
          <h1>{state.name}</h1>
          <dl className="facts">
            <div>
              <dt>What they are</dt>
              <dd>{state.title}</dd>
            </div>
            <div>
              <dt>Identity, permanent</dt>
              <dd>{state.id}</dd>
            </div>
            <div>
              <dt>Signs with</dt>
              <dd>{view.hasAccount ? 'their own password' : 'no account'}</dd>
            </div>
          </dl>
        </div>
        <div className="stack tight">
          <StandingMark standing={view.standing} />
          {mayReadStores(reading) ? (
            <Link className="button" href={pathOf('trace/person', stream)}>
              Every act
            </Link>
          ) : null}
        </div>
      </div>
      {view.leftOn ? (
        <p className="note">
          <strong>Left on {view.leftOn}.</strong> <span>What they signed stays theirs; nobody is deleted.</span>
        </p>
      ) : null}
      <div className="two">
        <div className="stack">
          <section className="sheet">
            <h2>Qualifications</h2>
            {view.qualifications.length === 0 ? (
              <p className="quiet">None recorded.</p>
            ) : (
              <table className="cards">
                <thead>
                  <tr>
                    <th>Number</th>
                    <th>Task</th>
                    <th>Geometry</th>
                    <th>Valid</th>
                  </tr>
                </thead>
                <tbody>
                  {view.qualifications.map(({ fact, correctedBy, today }) => (
                    <tr key={fact.id}>
                      <th scope="row">{fact.body.number}</th>
                      <td data-label="Task">{fact.body.task}</td>
                      <td data-label="Geometry">{fact.body.geometries?.join(' + ') ?? 'any'}</td>
                      <td data-label="Valid">
                        {correctedBy ? (
                          <>
                            <span className="old-value nowrap">
                              {fact.body.validFrom ?? ''} to {fact.body.validTo}
                            </span>
                            <br />
                            <span className="small">
                              corrected by {correctedBy.body.number} to {correctedBy.body.validTo}:{' '}
                              {correctedBy.body.reason ?? 'no reason kept'}
                            </span>
                          </>
                        ) : (
                          <>
                            <span className="nowrap">
                              {fact.body.validFrom ?? '…'} to {fact.body.validTo}
                            </span>
                            <br />
                            <span className="quiet small">{today === 'valid' ? 'valid today' : today}</span>
                          </>
                        )}
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
            )}
          </section>
          <section className="sheet">
            <h2>Roles by project and day</h2>
            {view.grants.length === 0 ? (
              <p className="quiet">None granted.</p>
            ) : (
              <ul className="plain-list">
                {view.grants.map((one) => (
                  <li key={`${one.project}${one.role}${one.from}`}>
                    <Link href={pathOf('projects', one.project)}>{one.projectName}</Link>: {one.role}
                    {one.approve ? ', with the right to approve' : ''}
                    <br />
                    <span className="quiet small">
                      {one.from} to {one.to ?? 'further notice'}
                      {one.isToday ? '' : ', not today'}
                    </span>
                  </li>
                ))}
              </ul>
            )}
          </section>
          <PersonKeys reading={reading} view={view} />
          <section className="sheet">
            <h2>What was recorded</h2>
            <EventTrail events={view.events} label={`What was recorded of ${state.name}`} />
          </section>
        </div>
        <PersonActs reading={reading} view={view} />
      </div>
    </main>
  )
}
