import type { Metadata } from 'next'
import { Suspense } from 'react'
import { Caution } from '@/app/_ui/caution'
import { SiteDesk } from './site-desk'

/** The manifest is named once the first screen is drawn: on a slow phone it is two requests that a form would wait for. */
export const metadata: Metadata = { title: 'On site', manifest: null }
export const dynamic = 'force-static'

/** The screens for work without a network. The page itself is a shell without content: everything on it comes from what this device keeps. */
export default function SitePage() {
  return (
    <>
      <Suspense fallback={<p className="page quiet">Opening what this device keeps.</p>}>
        <SiteDesk />
      </Suspense>
      <Caution />
    </>
  )
}
