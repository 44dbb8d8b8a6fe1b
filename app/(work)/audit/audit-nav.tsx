import Link from 'next/link'

const PAGES = [
  ['/audit', 'The log'],
  ['/audit/search', 'Search'],
  ['/audit/sample', 'Sample'],
] as const

/** The pages of the audit room, with the one that is open. */
export function AuditNav({ at }: { at: (typeof PAGES)[number][0] | null }) {
  return (
    <nav className="audit-nav no-print" aria-label="Audit room">
      {PAGES.map(([href, label]) => (
        <Link key={href} href={href} aria-current={href === at ? 'page' : undefined}>
          {label}
        </Link>
      ))}
    </nav>
  )
}
