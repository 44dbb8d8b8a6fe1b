const BOXES = new Set(['ftyp', 'meta', 'mdat', 'moov', 'free', 'skip', 'wide', 'uuid'])

/**
 * Name the outermost box of a HEIF file that the file's end cuts short, or null when all are whole. A decoder fills
 * missing tiles with grey without a word, so an upload cut short shows only here. Foreign bytes after the boxes, as some
 * phones add, are let be.
 * @source ISO/IEC 14496-12 4.2 (box header)
 */
export function findCutBox(bytes: Uint8Array): string | null {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length)
  // every length comes from the file
  for (let at = 0; at + 8 <= file.length; ) {
    const name = file.toString('latin1', at + 4, at + 8)
    if (!BOXES.has(name)) return null
    const stated = file.readUInt32BE(at)
    if (stated === 0) return null
    if (stated === 1 && at + 16 > file.length) return name
    const lengthBytes = stated === 1 ? Number(file.readBigUInt64BE(at + 8)) : stated
    if (lengthBytes < 8 || at + lengthBytes > file.length) return name
    at += lengthBytes
  }
  return null
}
