import { FactId } from '@/lib/domain/facts/fact'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import type { PhotoState } from '@/lib/domain/fold/repair-state'
import { photoBody } from '@/test/domain/fold/photo-body'

const AT = '2026-05-13T08:05:00+01:00'
const BY = 'tobias-wrenfield'
/** Size of a rendition. */
export const SIZE = { widthPx: 1344, heightPx: 1008 } as const

/** A photo of the finished wrap whose rendition has this digest. */
export function photoState(sha256: string, at: number): PhotoState {
  const part = { sha256, sizeBytes: 1, ...SIZE }
  const claims = { takenAt: '2026-05-13T08:05:00', offset: '+01:00' }
  const photo = photoBody('0', { ...part, rendition: part, thumb: part, claims })
  const fact = {
    v: 1,
    id: FactId.parse(`0190a000-0000-7000-8000-${String(at).padStart(12, '0')}`),
    stream: 'repair:MD-0041',
    kind: 'photo-attached',
    observedAt: AT,
    observedBy: BY,
    enteredAt: AT,
    enteredBy: BY,
    device: { id: 'tablet', clockOffsetMs: 0 },
    body: { point: '17', attempt: 1, photo, caption: `Finished wrap, view ${at + 1}` },
  }
  return { fact: fact as unknown as FactOf<'photo-attached'>, judged: null, flags: [] }
}
