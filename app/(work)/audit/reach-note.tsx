import type { TrailReach } from '@/lib/server/views/audit-reach'

/** Says which projects' records are left out because the reader is no auditor or inspector there. */
export function ReachNote({ reach }: { reach: TrailReach }) {
  if (reach.isWhole) return null
  return (
    <p className="note warn">
      <strong>Not the whole record.</strong>{' '}
      <span>
        Left out: {reach.shutProjects.map((one) => one.slice('project:'.length)).join(', ')}, where you are neither
        auditor nor inspector.
      </span>
    </p>
  )
}
