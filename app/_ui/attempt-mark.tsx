import type { AttemptStateName } from '@/lib/domain/fold/repair-state'
import { Glyph, type GlyphName } from './glyph'

const SHOWN: Record<AttemptStateName, { word: string; glyph: GlyphName; tone: string }> = {
  closed: { word: 'Closed', glyph: 'closed', tone: 'plain-state' },
  open: { word: 'Open', glyph: 'open', tone: 'plain-state' },
  'in progress': { word: 'In progress', glyph: 'open', tone: 'plain-state' },
  submitted: { word: 'Submitted', glyph: 'hold', tone: 'plain-state' },
  refused: { word: 'Release refused', glyph: 'fail', tone: 'fail' },
  released: { word: 'Released', glyph: 'pass', tone: 'pass' },
  'partly released': { word: 'Released in part', glyph: 'not proven', tone: 'not-proven' },
  lapsed: { word: 'Lapsed', glyph: 'lapsed', tone: 'lapsed' },
  withdrawn: { word: 'Release withdrawn', glyph: 'lapsed', tone: 'lapsed' },
  'in question': { word: 'In question', glyph: 'question', tone: 'question' },
  'passed without release': { word: 'Passed without release', glyph: 'fail', tone: 'fail' },
  'not applicable': { word: 'Not applicable', glyph: 'closed', tone: 'plain-state' },
  superseded: { word: 'Superseded', glyph: 'closed', tone: 'plain-state' },
}

/** State of an attempt at a point, in the words of the plan: "released", never more than that. */
export function AttemptMark({ state }: { state: AttemptStateName }) {
  const { word, glyph, tone } = SHOWN[state]
  return (
    <span className={`mark ${tone}`}>
      <Glyph name={glyph} />
      {word}
    </span>
  )
}
