import { createHash } from 'node:crypto'
import { FactId } from '@/lib/domain/facts/fact'

/**
 * A UUIDv7 that is the same on every run: 48 bits of the observed instant (ms), the number of the fact in its stream, and bits of a
 * digest of stream and number. Only the demo makes ids so; devices draw theirs at random.
 */
export function scriptedFactId(instantMs: number, stream: string, no: number): FactId {
  if (no < 0 || no > 0xfff) throw new RangeError(`Expected at most 4096 facts in ${stream}, received no. ${no}`)
  const digest = createHash('sha256').update(`${stream} ${no}`).digest('hex')
  const time = instantMs.toString(16).padStart(12, '0')
  const variant = (8 + (Number.parseInt(digest.slice(0, 1), 16) % 4)).toString(16)
  return FactId.parse(
    `${time.slice(0, 8)}-${time.slice(8)}-7${no.toString(16).padStart(3, '0')}-${variant}${digest.slice(1, 4)}-${digest.slice(4, 16)}`,
  )
}
