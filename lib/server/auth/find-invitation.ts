import { loadRuntime } from '@/lib/server/runtime/runtime'
import { loadInvitation } from './invitations'

/** Whom an invitation's link is for; null when it was taken up or its time ran out. */
export async function findInvitation(
  token: string,
): Promise<{ name: string; email: string; organisation: string } | null> {
  const { store } = await loadRuntime()
  const invited = await loadInvitation(store.db.queries, token)
  return invited && { name: invited.name, email: invited.email, organisation: invited.organisation }
}
