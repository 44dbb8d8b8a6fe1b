import { Glyph, type GlyphName } from '@/app/_ui/glyph'
import type { NonconformanceState } from '@/lib/domain/fold/nonconformance-state'

const SHOWN: Record<NonconformanceState['state'], { glyph: GlyphName; tone: string }> = {
  raised: { glyph: 'fail', tone: 'fail' },
  contained: { glyph: 'hold', tone: 'not-proven' },
  assessed: { glyph: 'hold', tone: 'not-proven' },
  'disposition proposed': { glyph: 'question', tone: 'question' },
  'disposition approved': { glyph: 'open', tone: 'plain-state' },
  'action in progress': { glyph: 'open', tone: 'plain-state' },
  verified: { glyph: 'pass', tone: 'pass' },
  closed: { glyph: 'closed', tone: 'plain-state' },
  rejected: { glyph: 'closed', tone: 'plain-state' },
  reopened: { glyph: 'fail', tone: 'fail' },
  'voided duplicate': { glyph: 'closed', tone: 'plain-state' },
}

/** State of a nonconformance: a shape and its word. */
export function NonconformanceMark({ state }: { state: NonconformanceState['state'] }) {
  const { glyph, tone } = SHOWN[state]
  const word = state === 'rejected' ? 'rejected as none' : state
  return (
    <span className={`mark ${tone}`}>
      <Glyph name={glyph} />
      {word.charAt(0).toUpperCase() + word.slice(1)}
    </span>
  )
}
