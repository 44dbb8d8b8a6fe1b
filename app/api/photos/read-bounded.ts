/** Read a stream to its end, or give up as soon as it is longer than allowed: null, and the rest is not read. No stream is no bytes. */
export async function readBounded(
  stream: ReadableStream<Uint8Array> | null,
  bytesAtMost: number,
): Promise<Uint8Array | null> {
  if (!stream) return new Uint8Array()
  const reader = stream.getReader()
  const parts: Uint8Array[] = []
  let sizeBytes = 0
  for (;;) {
    const { done, value } = await reader.read()
    if (done) return Buffer.concat(parts)
    sizeBytes += value.length
    if (sizeBytes > bytesAtMost) {
      await reader.cancel()
      return null
    }
    parts.push(value)
  }
}
