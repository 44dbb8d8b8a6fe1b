import Link from 'next/link'
import { notFound } from 'next/navigation'
import { EventTrail } from '@/app/_desk/event-trail'
import { requireDesk, streamAt } from '@/app/_desk/require-desk'
import { CalendarDay } from '@/lib/domain/time'
import { loadProjectView } from '@/lib/server/views/project-view'
import { ProjectActs } from './project-acts'

export default async function ProjectPage({
  params,
  searchParams,
}: {
  params: Promise<{ name: string }>
  searchParams: Promise<{ day?: string; all?: string }>
}) {
  const reading = await requireDesk()
  const asked = CalendarDay.safeParse((await searchParams).day)
  const view = await loadProjectView(
    reading,
    streamAt('project', (await params).name),
    asked.success ? asked.data : null,
  )
  if (!view) notFound()
  const { body } = view.state.opened
  const held = view.roles.filter((one) => one.isHeld)
  const others = view.roles.filter((one) => !one.isHeld)
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">{body.site}</p>
          <h1>{body.name}</h1>
          <dl className="facts">
            <div>
              <dt>Owner</dt>
              <dd>{body.owner}</dd>
            </div>
            <div>
              <dt>Site time</dt>
              <dd>UTC {body.utcOffset}</dd>
            </div>
          </dl>
        </div>
      </div>
      <div className="two">
        <div className="stack">
          <section className="sheet">
            <h2>Parties</h2>
            {Object.keys(view.state.parties).length === 0 ? (
              <p className="quiet">No party is named yet.</p>
            ) : (
              <dl className="pairs">
                {Object.entries(view.state.parties).map(([party, name]) => (
                  <div key={party} style={{ display: 'contents' }}>
                    <dt>{party}</dt>
                    <dd>{name}</dd>
                  </div>
                ))}
              </dl>
            )}
          </section>
          <section className="sheet">
            <div className="sheet-head">
              <h2>Roles on {view.day}</h2>
            </div>
            <form className="filters" method="get">
              <div className="field">
                <label htmlFor="day">Another day</label>
                <input id="day" name="day" type="date" defaultValue={view.day} />
              </div>
              <button className="button plain" type="submit">
                Show
              </button>
            </form>
            {held.length === 0 ? (
              <p className="quiet">Nobody holds a role here on that day.</p>
            ) : (
              <table className="cards">
                <thead>
                  <tr>
                    <th>Name</th>
                    <th>Role</th>
                    <th>From</th>
                    <th>To</th>
                  </tr>
                </thead>
                <tbody>
                  {held.map((one) => (
                    <tr key={one.grant}>
                      <th scope="row">
                        <Link href={`/people/${encodeURIComponent(one.person)}`}>{one.name}</Link>
                      </th>
                      <td data-label="Role">
                        {one.role}
                        {one.approve ? ', may approve' : ''}
                      </td>
                      <td data-label="From" className="nowrap">
                        {one.from}
                      </td>
                      <td data-label="To" className="nowrap">
                        {one.to ?? 'further notice'}
                        {one.ended ? <span className="quiet small"> {one.ended}</span> : null}
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
            )}
            {others.length > 0 ? (
              <details className="earlier">
                <summary>{others.length} not held on that day</summary>
                <ul className="plain-list">
                  {others.map((one) => (
                    <li key={one.grant}>
                      {one.name}: {one.role}
                      <br />
                      <span className="quiet small">
                        {one.from} to {one.to ?? 'further notice'}
                        {one.ended ? `, ended: ${one.ended}` : ''}
                      </span>
                    </li>
                  ))}
                </ul>
              </details>
            ) : null}
          </section>
          <section className="sheet">
            <h2>What was recorded</h2>
            <EventTrail events={view.events} label="What was recorded of the project" />
          </section>
        </div>
        <ProjectActs reading={reading} view={view} />
      </div>
    </main>
  )
}
