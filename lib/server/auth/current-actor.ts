import { headers } from 'next/headers'
import { cache } from 'react'
import { loadRuntime } from '@/lib/server/runtime/runtime'
import type { Actor } from './actor'
import { loadActorOfAccount } from './load-actor'

/** Who is asking, by the session cookie of this request; null when nobody is signed in. Read once a request. */
export const currentActor = cache(async (): Promise<Actor | null> => {
  const { auth, store } = await loadRuntime()
  const found = await auth.api.getSession({ headers: await headers() })
  return found ? loadActorOfAccount(store, found.user.id, found.session.activeOrganizationId ?? null) : null
})
