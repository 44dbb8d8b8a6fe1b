import { ActFold } from '@/app/_desk/act-fold'
import { ActForm } from '@/app/_desk/act-form'
import { mayAct } from '@/app/_desk/require-desk'
import { endRoleAction, grantRoleAction, namePartyAction } from '@/app/(work)/actions/project-actions'
import { ROLES } from '@/lib/domain/roles'
import { loadPersonRows } from '@/lib/server/views/person-list-view'
import type { ProjectView } from '@/lib/server/views/project-view'
import type { ReadingDesk } from '@/lib/server/views/reading-desk'

/** What an administrator does with a project: parties and roles. Nobody grants a role to himself. */
export async function ProjectActs({ reading, view }: { reading: ReadingDesk; view: ProjectView }) {
  if (!mayAct(reading, 'administer'))
    return (
      <p className="note">
        <strong>Roles are granted by an administrator.</strong> <span>Every grant and its end is on record.</span>
      </p>
    )
  const { stream } = view.state
  const persons = (await loadPersonRows(reading))
    .filter((row) => row.leftOn === null && row.id !== reading.actor.person)
    .map((row) => ({ id: row.id, label: `${row.name}, ${row.party}` }))
  const endable = view.roles
    .filter((one) => one.ended === null && one.person !== reading.actor.person)
    .map((one) => ({ id: one.grant, label: `${one.name}: ${one.role} from ${one.from}` }))
  return (
    <section className="acts" aria-label="Acts on the project">
      <ActFold title="Grant a role" open>
        <ActForm
          action={grantRoleAction}
          kind="role-granted"
          stream={stream}
          submit="Grant the role"
          done="Granted."
          initial={{ from: view.day }}
          fields={[
            { kind: 'select', name: 'person', label: 'To', options: persons },
            { kind: 'select', name: 'role', label: 'Role', options: ROLES.map((role) => ({ id: role, label: role })) },
            { kind: 'day', name: 'from', label: 'From' },
            { kind: 'day', name: 'to', label: 'Last day', optional: true },
            {
              kind: 'flag',
              name: 'approve',
              label: 'With the right to approve',
              hint: 'For an inspector who acts as quality manager',
            },
          ]}
        />
      </ActFold>
      <ActFold title="End a role">
        <ActForm
          action={endRoleAction}
          kind="role-ended"
          stream={stream}
          submit="End the role"
          done="Ended; what was done under it stays."
          tone="stop"
          fields={[
            { kind: 'select', name: 'grant', label: 'Which', options: endable },
            { kind: 'day', name: 'on', label: 'Last day' },
            { kind: 'text', name: 'reason', label: 'Reason' },
          ]}
        />
      </ActFold>
      <ActFold title="Name a party">
        <ActForm
          action={namePartyAction}
          kind="party-named"
          stream={stream}
          submit="Name it"
          done="Named."
          fields={[
            {
              kind: 'choice',
              name: 'party',
              label: 'Party',
              options: ['owner', 'crew', 'inspection body', 'engineer', 'area authority'],
            },
            { kind: 'text', name: 'name', label: 'Name' },
          ]}
        />
      </ActFold>
    </section>
  )
}
