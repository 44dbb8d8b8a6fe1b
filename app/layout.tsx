import type { Metadata, Viewport } from 'next'
import type { ReactNode } from 'react'
import { FACES } from './_ui/face'
import './globals.css'

export const metadata: Metadata = {
  title: { default: 'Underwrap', template: '%s · Underwrap' },
  description: 'The record of engineered composite repairs of leaking pipes, hold point by hold point',
  manifest: '/manifest.webmanifest',
}
export const viewport: Viewport = { width: 'device-width', initialScale: 1, themeColor: '#14181b' }

const THEME = `try{var t=localStorage.getItem('theme');if(t)document.documentElement.dataset.theme=t}catch(e){}`

export default function RootLayout({ children }: { children: ReactNode }) {
  return (
    <html lang="en" className={FACES} suppressHydrationWarning>
      <body>
        {/* Before first paint, so that a night shaft is not lit by a white page. The text is constant. */}
        {/* biome-ignore lint/security/noDangerouslySetInnerHtml: constant text, no input */}
        <script dangerouslySetInnerHTML={{ __html: THEME }} />
        <a className="skip" href="#main">
          To the page
        </a>
        {children}
      </body>
    </html>
  )
}
