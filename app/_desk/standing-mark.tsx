import { Glyph, type GlyphName } from '@/app/_ui/glyph'

export type Standing =
  | 'in date'
  | 'expires soon'
  | 'expired'
  | 'quarantined'
  | 'recalled'
  | 'no expiry stated'
  | 'in force'
  | 'due soon'
  | 'overdue'
  | 'no certificate'
  | 'found wrong'
  | 'qualified'
  | 'ends soon'
  | 'ended'
  | 'no qualification'
  | 'draft'

const SHOWN: Record<Standing, { glyph: GlyphName; tone: string }> = {
  'in date': { glyph: 'pass', tone: 'pass' },
  'in force': { glyph: 'pass', tone: 'pass' },
  qualified: { glyph: 'pass', tone: 'pass' },
  'expires soon': { glyph: 'lapsed', tone: 'not-proven' },
  'due soon': { glyph: 'lapsed', tone: 'not-proven' },
  'ends soon': { glyph: 'lapsed', tone: 'not-proven' },
  expired: { glyph: 'fail', tone: 'fail' },
  overdue: { glyph: 'fail', tone: 'fail' },
  ended: { glyph: 'fail', tone: 'fail' },
  quarantined: { glyph: 'hold', tone: 'fail' },
  recalled: { glyph: 'fail', tone: 'fail' },
  'found wrong': { glyph: 'question', tone: 'question' },
  'no expiry stated': { glyph: 'open', tone: 'plain-state' },
  'no certificate': { glyph: 'not proven', tone: 'not-proven' },
  'no qualification': { glyph: 'closed', tone: 'plain-state' },
  draft: { glyph: 'open', tone: 'plain-state' },
}

/** How a batch, an instrument or a person stands today: a shape and a word, then the colour. */
export function StandingMark({ standing }: { standing: Standing }) {
  const { glyph, tone } = SHOWN[standing]
  return (
    <span className={`mark ${tone}`}>
      <Glyph name={glyph} />
      {standing.charAt(0).toUpperCase() + standing.slice(1)}
    </span>
  )
}
