import { eq } from 'drizzle-orm'
import { cache } from 'react'
import { tenants } from '@/db/schema'
import type { PersonId } from '@/lib/domain/facts/fact'
import { mayAudit } from './audit-reach'
import { clockKindOf } from './clock-kind'
import { openReadingDesk } from './reading-desk'
import { loadWaitingView } from './waiting-view'

export type FrameView = {
  tenant: string
  person: PersonId
  name: string
  clockKind: 'real' | 'demo' | 'test'
  waitingCount: number
  isAdministrator: boolean
  isAuditor: boolean
  isDemo: boolean
}

/** Whether a tenant's record is a demonstration. */
export const loadIsDemo = cache(async (tenant: string): Promise<boolean> => {
  const reading = await openReadingDesk()
  const [row] = reading
    ? await reading.desk.store.db.queries.select({ isDemo: tenants.isDemo }).from(tenants).where(eq(tenants.id, tenant))
    : []
  return row?.isDemo ?? false
})

/** What stands over every page: who is signed in and how much waits; null when nobody is. */
export const loadFrameView = cache(async (): Promise<FrameView | null> => {
  const reading = await openReadingDesk()
  if (!reading) return null
  const waiting = await loadWaitingView(reading)
  return {
    tenant: reading.actor.tenant,
    person: reading.actor.person,
    name: reading.actor.name,
    clockKind: await clockKindOf(reading.desk.store, reading.actor.tenant),
    waitingCount: waiting.lines.filter((line) => line.kind !== 'record').length,
    isAdministrator: reading.roles.includes('administrator'),
    isAuditor: mayAudit(reading.desk),
    isDemo: await loadIsDemo(reading.actor.tenant),
  }
})
