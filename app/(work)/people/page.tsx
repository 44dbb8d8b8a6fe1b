import Link from 'next/link'
import { ActFold } from '@/app/_desk/act-fold'
import { ActForm } from '@/app/_desk/act-form'
import { BarredNote } from '@/app/_desk/barred-note'
import type { DeskField } from '@/app/_desk/desk-field'
import { mayAct, mayReadStores, pathOf, requireDesk } from '@/app/_desk/require-desk'
import { StandingMark } from '@/app/_desk/standing-mark'
import { EmptyNote } from '@/app/_ui/empty-note'
import { loadPersonRows } from '@/lib/server/views/person-list-view'
import { registerPersonAction } from '../actions/person-actions'

export const metadata = { title: 'People' }

const FIELDS: readonly DeskField[] = [
  {
    kind: 'text',
    name: 'ownName',
    label: 'Identity, short and permanent',
    hint: 'Such as initials or a staff number. It is never used again.',
  },
  { kind: 'text', name: 'name', label: 'Name' },
  { kind: 'text', name: 'title', label: 'What they are', hint: 'Such as applicator, inspector, designer' },
  { kind: 'choice', name: 'party', label: 'Party', options: ['owner', 'crew', 'inspection body', 'engineer'] },
]

export default async function PeoplePage() {
  const reading = await requireDesk()
  const mayRegister = mayAct(reading, 'administer')
  if (!mayReadStores(reading) && !mayRegister) return <BarredNote title="People" forWhom="everyone with a role" />
  const rows = await loadPersonRows(reading)
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">Names, party and qualification; nothing more is kept</p>
          <h1>People</h1>
        </div>
        {mayRegister ? (
          <Link className="button plain" href="/accounts">
            Accounts and roles
          </Link>
        ) : null}
      </div>
      {mayRegister ? (
        <ActFold title="Register a person" note="identity is permanent" open={rows.length <= 1}>
          <ActForm
            action={registerPersonAction}
            kind="person-registered"
            stream={{ kind: 'person', from: 'ownName' }}
            fields={FIELDS}
            submit="Register"
            done="Registered."
            goTo="/people/{name}"
          />
        </ActFold>
      ) : null}
      {rows.length === 0 ? (
        <EmptyNote title="Nobody is registered yet.">
          <span>An administrator registers persons.</span>
        </EmptyNote>
      ) : (
        <div className="sheet">
          <table className="cards">
            <thead>
              <tr>
                <th>Name</th>
                <th>Party</th>
                <th>Roles today</th>
                <th>Qualification</th>
                <th>Today</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={row.id}>
                  <th scope="row">
                    <Link href={pathOf('people', row.stream)}>{row.name}</Link>
                  </th>
                  <td>
                    {row.party}
                    <br />
                    <span className="quiet small">{row.title}</span>
                  </td>
                  <td data-label="Roles today">
                    {row.roles.join(', ') || 'none'}
                    {row.leftOn ? (
                      <>
                        <br />
                        <span className="quiet small">left {row.leftOn}</span>
                      </>
                    ) : null}
                  </td>
                  <td data-label="Qualification">
                    {row.qualifications.length === 0
                      ? 'none recorded'
                      : row.qualifications.map((one) => (
                          <p key={`${one.number}${one.validTo}`}>
                            {one.number} {one.task}
                            <span className="quiet small">
                              {' '}
                              {one.geometries.join(' + ')} to <span className="nowrap">{one.validTo}</span>
                            </span>
                          </p>
                        ))}
                  </td>
                  <td data-label="Today">
                    <StandingMark standing={row.standing} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </main>
  )
}
