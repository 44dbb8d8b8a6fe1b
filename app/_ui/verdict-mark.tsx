import type { VerdictKind } from '@/lib/domain/judge/verdict'
import { Glyph } from './glyph'

const WORDS: Record<VerdictKind, string> = { pass: 'Pass', fail: 'Fail', 'not proven': 'Not proven' }
const CLASSES: Record<VerdictKind, string> = { pass: 'pass', fail: 'fail', 'not proven': 'not-proven' }

/** A verdict: shape and word before colour. */
export function VerdictMark({ verdict, conceded = false }: { verdict: VerdictKind; conceded?: boolean }) {
  return (
    <span className={`mark ${CLASSES[verdict]}`}>
      <Glyph name={verdict} />
      {WORDS[verdict]}
      {conceded ? ', conceded' : ''}
    </span>
  )
}
