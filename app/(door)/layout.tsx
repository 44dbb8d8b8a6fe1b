import type { ReactNode } from 'react'
import { STANDING_CAUTION } from '@/lib/domain/caution'
import './door.css'

export const dynamic = 'force-dynamic'

export default function DoorLayout({ children }: { children: ReactNode }) {
  return (
    <div className="door">
      <header className="door-head">
        <p className="door-name">Underwrap</p>
        <p>The record of engineered composite repairs of leaking pipes, hold point by hold point.</p>
      </header>
      <main id="main" className="door-main">
        {children}
      </main>
      <p className="door-caution">{STANDING_CAUTION}</p>
    </div>
  )
}
