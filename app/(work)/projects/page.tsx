import Link from 'next/link'
import { ActFold } from '@/app/_desk/act-fold'
import { ActForm } from '@/app/_desk/act-form'
import type { DeskField } from '@/app/_desk/desk-field'
import { mayAct, pathOf, requireDesk } from '@/app/_desk/require-desk'
import { EmptyNote } from '@/app/_ui/empty-note'
import { loadProjectRows } from '@/lib/server/views/project-list-view'
import { openProjectAction } from '../actions/project-actions'

export const metadata = { title: 'Projects' }

const FIELDS: readonly DeskField[] = [
  { kind: 'text', name: 'ownName', label: 'Short name', hint: 'Permanent; it stands in addresses and exports' },
  { kind: 'text', name: 'name', label: 'Project' },
  { kind: 'text', name: 'site', label: 'Site' },
  { kind: 'text', name: 'owner', label: 'Owner of the lines' },
  {
    kind: 'text',
    name: 'utcOffset',
    label: 'UTC offset of the site',
    hint: 'Such as +01:00. Times of the record are shown with it.',
  },
]

export default async function ProjectsPage() {
  const reading = await requireDesk()
  const rows = await loadProjectRows(reading)
  const mayOpen = mayAct(reading, 'administer')
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">Parties, and rights by project and day</p>
          <h1>Projects</h1>
        </div>
      </div>
      {mayOpen ? (
        <ActFold title="Open a project" open={rows.length <= 1}>
          <ActForm
            action={openProjectAction}
            kind="project-opened"
            stream={{ kind: 'project', from: 'ownName' }}
            fields={FIELDS}
            submit="Open the project"
            done="Opened."
            goTo="/projects/{name}"
          />
        </ActFold>
      ) : null}
      {rows.length === 0 ? (
        <EmptyNote title="You hold no role in a project today.">
          <span>An administrator grants roles.</span>
        </EmptyNote>
      ) : (
        <div className="sheet">
          <table className="cards">
            <thead>
              <tr>
                <th>Project</th>
                <th>Site</th>
                <th>Owner</th>
                <th className="num">People today</th>
                <th>Your roles</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={row.stream}>
                  <th scope="row">
                    <Link href={pathOf('projects', row.stream)}>{row.name}</Link>
                  </th>
                  <td data-label="Site">{row.site}</td>
                  <td data-label="Owner">{row.owner}</td>
                  <td data-label="People today" className="num">
                    {row.peopleToday}
                  </td>
                  <td data-label="Your roles">{row.myRoles.join(', ') || 'none'}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </main>
  )
}
