import type { RepairStatus } from '@/lib/domain/fold/repair-state'
import { Glyph, type GlyphName } from './glyph'

const SHOWN: Record<RepairStatus, { glyph: GlyphName; tone: string }> = {
  planned: { glyph: 'open', tone: 'plain-state' },
  'in progress': { glyph: 'open', tone: 'plain-state' },
  'on hold': { glyph: 'hold', tone: 'not-proven' },
  accepted: { glyph: 'pass', tone: 'pass' },
  'accepted under concession': { glyph: 'fail', tone: 'fail' },
  'in service': { glyph: 'pass', tone: 'pass' },
  overdue: { glyph: 'lapsed', tone: 'fail' },
  'life extended': { glyph: 'pass', tone: 'pass' },
  removed: { glyph: 'closed', tone: 'plain-state' },
  abandoned: { glyph: 'closed', tone: 'plain-state' },
}

/** Status of a repair in the register's words. */
export function StatusMark({ status }: { status: RepairStatus }) {
  const { glyph, tone } = SHOWN[status]
  return (
    <span className={`mark ${tone}`}>
      <Glyph name={glyph} />
      {status.charAt(0).toUpperCase() + status.slice(1)}
    </span>
  )
}
