import Link from 'next/link'
import { BarredNote } from '@/app/_desk/barred-note'
import { mayAct, pathOf, requireDesk } from '@/app/_desk/require-desk'
import { EmptyNote } from '@/app/_ui/empty-note'
import { loadAccountRows } from '@/lib/server/views/account-list-view'
import { InviteForm } from './invite-form'

export const metadata = { title: 'Accounts and roles' }

export default async function AccountsPage() {
  const reading = await requireDesk()
  if (!mayAct(reading, 'administer')) return <BarredNote title="Accounts and roles" forWhom="administrators" />
  const rows = await loadAccountRows(reading)
  const without = rows.filter((row) => row.email === null && row.leftOn === null)
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">An administrator keeps accounts and roles, and touches no record</p>
          <h1>Accounts and roles</h1>
        </div>
        <div className="row">
          <Link className="button plain" href="/people">
            Register a person
          </Link>
          <Link className="button plain" href="/projects">
            Grant roles
          </Link>
        </div>
      </div>
      <div className="two">
        <section className="sheet">
          <h2>Who signs in</h2>
          <table className="cards">
            <thead>
              <tr>
                <th>Person</th>
                <th>Address</th>
                <th>Roles today</th>
              </tr>
            </thead>
            <tbody>
              {rows
                .filter((row) => row.email !== null)
                .map((row) => (
                  <tr key={row.person}>
                    <th scope="row">
                      <Link href={pathOf('people', row.stream)}>{row.name}</Link>
                    </th>
                    <td data-label="Address">{row.email}</td>
                    <td data-label="Roles today">
                      {row.roles.join(', ') || 'none'}
                      {row.leftOn ? `, left ${row.leftOn}` : ''}
                    </td>
                  </tr>
                ))}
            </tbody>
          </table>
        </section>
        <section className="sheet">
          <h2>Invite a person</h2>
          {without.length === 0 ? (
            <EmptyNote title="Everyone registered has an account.">
              <Link className="button plain" href="/people">
                Register a person first
              </Link>
            </EmptyNote>
          ) : (
            <InviteForm persons={without.map((row) => ({ id: row.person, label: `${row.name}, ${row.party}` }))} />
          )}
        </section>
      </div>
    </main>
  )
}
