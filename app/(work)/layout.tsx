import { redirect } from 'next/navigation'
import type { ReactNode } from 'react'
import { Caution } from '@/app/_ui/caution'
import { WorkBar } from '@/app/_ui/work-bar'
import { signOut } from '@/lib/server/auth/sign-in'
import { loadFrameView } from '@/lib/server/views/frame-view'

export const dynamic = 'force-dynamic'

async function leave() {
  'use server'
  await signOut()
  redirect('/sign-in')
}

export default async function WorkLayout({ children }: { children: ReactNode }) {
  const frame = await loadFrameView()
  if (!frame) redirect('/sign-in')
  return (
    <>
      <WorkBar
        user={{ tenant: frame.tenant, person: frame.person, name: frame.name, clockKind: frame.clockKind }}
        waitingCount={frame.waitingCount}
        isAdministrator={frame.isAdministrator}
        isAuditor={frame.isAuditor}
        isDemo={frame.isDemo}
        signOut={leave}
      />
      {children}
      <Caution />
    </>
  )
}
