/** Size and number of colour components of a JPEG; null when the bytes are no JPEG with a frame header. */
export function readJpegHeader(bytes: Uint8Array): { widthPx: number; heightPx: number; components: number } | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (bytes.length < 4 || view.getUint16(0) !== 0xffd8) return null
  let at = 2
  while (at + 9 < bytes.length) {
    if (bytes[at] !== 0xff) return null
    const marker = bytes[at + 1] ?? 0
    if (marker === 0xff) {
      at += 1
      continue
    }
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
      return { heightPx: view.getUint16(at + 5), widthPx: view.getUint16(at + 7), components: bytes[at + 9] ?? 0 }
    at += 2 + view.getUint16(at + 2)
  }
  return null
}
