import { StreamId, type StreamKind } from '@/lib/domain/facts/fact'

/** The stream of a kind that a field names; null when the name can be none. */
export function streamNamed(kind: StreamKind, name: string): StreamId | null {
  const stream = StreamId.safeParse(`${kind}:${name.trim()}`)
  return stream.success ? stream.data : null
}
