import { crc32, deflateSync } from 'node:zlib'

const END_OF_IHDR = 33

/**
 * Put a colour profile into a PNG without touching its pixels, so that the next reader transforms them.
 * @source PNG specification (third edition) 5.3 chunk layout, 11.3.2.3 iCCP
 */
export function attachIcc(png: Uint8Array, icc: Uint8Array): Buffer {
  const content = Buffer.concat([Buffer.from('iCCPphoto\0\0', 'latin1'), deflateSync(icc, { level: 1 })])
  const chunk = Buffer.alloc(content.length + 8)
  chunk.writeUInt32BE(content.length - 4, 0)
  content.copy(chunk, 4)
  chunk.writeUInt32BE(crc32(content), content.length + 4)
  return Buffer.concat([png.subarray(0, END_OF_IHDR), chunk, png.subarray(END_OF_IHDR)])
}
