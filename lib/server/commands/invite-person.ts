import { and, eq } from 'drizzle-orm'
import * as z from 'zod'
import { user } from '@/db/auth-schema'
import { accountPersons } from '@/db/schema'
import { PersonId, streamOf } from '@/lib/domain/facts/fact'
import { foldPerson } from '@/lib/domain/fold/fold-person'
import { done, refused } from '@/lib/domain/result'
import { keepInvitation } from '@/lib/server/auth/invitations'
import { loadTenant } from '@/lib/server/store/tenants'
import { authorise } from './authorise'
import { command } from './command'

const InvitePerson = z.strictObject({
  person: PersonId,
  email: z
    .email()
    .max(254)
    .transform((text) => text.toLowerCase()),
})

/**
 * Invite a registered person to set a password: `{ person, email }`. Answers the path of the link, shown once to the administrator, who passes it on; nothing
 * is sent. Refuses `invalid`, `not-allowed`, `not-found`, `not-decided` (`person-has-account`, `email-taken`).
 */
export const invitePerson = command(InvitePerson, async (desk, form) => {
  const { actor, store } = desk
  const barred = authorise(actor, 'any', desk.today(null), 'administer')
  if (barred) return refused(barred)
  const stream = streamOf('person', form.person)
  const person = foldPerson((await desk.factsOf(stream)) ?? [], stream, desk.now(null))
  const tenant = await loadTenant(store, actor.tenant)
  if (!person || !tenant) return refused({ code: 'not-found' })
  const { queries } = store.db
  const [tie] = await queries
    .select()
    .from(accountPersons)
    .where(and(eq(accountPersons.tenant, actor.tenant), eq(accountPersons.personId, form.person)))
  if (tie) return refused({ code: 'not-decided', why: 'person-has-account', detail: [] })
  const [taken] = await queries.select({ id: user.id }).from(user).where(eq(user.email, form.email))
  if (taken) return refused({ code: 'not-decided', why: 'email-taken', detail: [] })
  const invited = {
    tenant: actor.tenant,
    organisation: tenant.name,
    person: form.person,
    name: person.name,
    email: form.email,
    invitedBy: actor.person,
  }
  const { token, expiresAt } = await keepInvitation(queries, invited)
  return done({
    path: `/invitation/${token}`,
    expiresAt: expiresAt.toISOString(),
    name: person.name,
    email: form.email,
  })
})
