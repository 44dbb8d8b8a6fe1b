import { StreamId, type StreamKind } from '@/lib/domain/facts/fact'

/**
 * The stream that a number keyed from a label or plate stands under: signs that a stream name cannot hold become a dash. The number itself stays as keyed.
 * @returns null when nothing usable is left
 */
export function streamOfNumber(kind: StreamKind, number: string): StreamId | null {
  const name = number
    .trim()
    .replace(/[^A-Za-z0-9._-]+/g, '-')
    .replace(/^[^A-Za-z0-9]+/, '')
  const stream = StreamId.safeParse(`${kind}:${name}`)
  return stream.success ? stream.data : null
}

/** The stream that a page's address names; null when it cannot be one. */
export function streamOfParam(kind: StreamKind, param: string): StreamId | null {
  let name = param
  try {
    name = decodeURIComponent(param)
  } catch (cause) {
    if (!(cause instanceof URIError)) throw cause
  }
  const stream = StreamId.safeParse(`${kind}:${name}`)
  return stream.success ? stream.data : null
}
