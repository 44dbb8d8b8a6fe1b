import type { StreamKind } from '@/lib/domain/facts/fact'
import { BODIES, type FactKind } from '@/lib/domain/facts/fact-kinds'

/** Every kind of fact by the kind of stream it stands in, for a choice. A kind of two streams is listed once. */
export function kindsByStream(): { stream: StreamKind; kinds: FactKind[] }[] {
  const seen = new Set<string>()
  return Object.entries(BODIES).flatMap(([stream, bodies]) => {
    const kinds = Object.keys(bodies).filter((kind) => !seen.has(kind)) as FactKind[]
    for (const kind of kinds) seen.add(kind)
    return kinds.length > 0 ? [{ stream: stream as StreamKind, kinds }] : []
  })
}

/** A clock error in words: `1 min 4 s fast`, `right` within half a second, `not known`. */
export function clockWords(offsetMs: number | null): string {
  if (offsetMs === null) return 'not known'
  if (Math.abs(offsetMs) < 500) return 'right'
  const seconds = Math.round(Math.abs(offsetMs) / 1000)
  const minutes = Math.floor(seconds / 60)
  return `${minutes > 0 ? `${minutes} min ` : ''}${seconds % 60} s ${offsetMs > 0 ? 'fast' : 'slow'}`
}
