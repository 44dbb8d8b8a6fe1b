/** Checksum of a zlib stream's contents. @source RFC 1950 section 8.2 */
export function adler32(bytes: Uint8Array): number {
  let [a, b] = [1, 0]
  for (let at = 0; at < bytes.length; ) {
    for (const end = Math.min(at + 3800, bytes.length); at < end; at += 1) {
      a += bytes[at] ?? 0
      b += a
    }
    a %= 65521
    b %= 65521
  }
  return b * 65536 + a
}
