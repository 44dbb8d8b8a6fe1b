export type PhotoType = 'jpeg' | 'png' | 'webp' | 'heic'

const HEVC_BRANDS = new Set(['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx'])
const NEUTRAL_BRANDS = new Set(['mif1', 'msf1'])

/**
 * Tell the type of a photo from its first bytes, never from a name; null when it is none of the four.
 * HEIC here is any HEIF file whose pictures are HEVC; AVIF is not one.
 * @source ITU-T T.81 B.1.1.3 (JPEG), PNG 5.2, RFC 9649 (WebP), ISO/IEC 23008-12 10.2 (HEIF brands)
 */
export function sniffType(bytes: Uint8Array): PhotoType | null {
  const head = Buffer.from(bytes.buffer, bytes.byteOffset, Math.min(bytes.length, 256))
  if (head.length >= 3 && head.readUIntBE(0, 3) === 0xffd8ff) return 'jpeg'
  if (head.toString('latin1', 0, 8) === '\x89PNG\r\n\x1a\n') return 'png'
  if (head.toString('latin1', 0, 4) === 'RIFF' && head.toString('latin1', 8, 12) === 'WEBP') return 'webp'
  return isHevcPicture(head) ? 'heic' : null
}

function isHevcPicture(head: Buffer): boolean {
  if (head.length < 16 || head.toString('latin1', 4, 8) !== 'ftyp') return false
  const major = head.toString('latin1', 8, 12)
  if (HEVC_BRANDS.has(major)) return true
  if (!NEUTRAL_BRANDS.has(major)) return false
  // the box length comes from the file: read no further than the bytes at hand
  const end = Math.min(head.readUInt32BE(0), head.length)
  for (let at = 16; at + 4 <= end; at += 4) if (HEVC_BRANDS.has(head.toString('latin1', at, at + 4))) return true
  return false
}
