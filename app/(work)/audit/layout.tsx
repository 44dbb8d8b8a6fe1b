import type { ReactNode } from 'react'
import '../../_style/audit.css'

export default function AuditLayout({ children }: { children: ReactNode }) {
  return <div className="audit">{children}</div>
}
