/** Columns of the sRGB primaries adapted to D50, as every sRGB profile states them. @source IEC 61966-2-1, ICC.1:2022 */
const SRGB_COLUMNS = {
  rXYZ: [0.436, 0.2224, 0.0139],
  gXYZ: [0.3851, 0.717, 0.0971],
  bXYZ: [0.1431, 0.0606, 0.714],
} as const
const COLUMN_TOLERANCE = 0.002
const MAX_TAGS = 100

/**
 * Whether an ICC profile is sRGB: it says so in its description and its three primaries agree. Such a profile needs no
 * transform, which saves half the time of a decode. Anything unreadable is not sRGB.
 */
export function isSrgbProfile(icc: Uint8Array): boolean {
  const profile = Buffer.from(icc.buffer, icc.byteOffset, icc.length)
  if (profile.length < 132 || profile.toString('latin1', 16, 20) !== 'RGB ') return false
  const tags = listTags(profile)
  const description = tags.get('desc')?.toString('latin1').replaceAll('\0', '') ?? ''
  if (!description.includes('sRGB')) return false
  return Object.entries(SRGB_COLUMNS).every(([name, column]) => {
    const tag = tags.get(name)
    if (tag === undefined || tag.length < 20) return false
    return column.every((value, row) => Math.abs(tag.readInt32BE(8 + 4 * row) / 65536 - value) <= COLUMN_TOLERANCE)
  })
}

function listTags(profile: Buffer): Map<string, Buffer> {
  const tags = new Map<string, Buffer>()
  // the count and every offset come from the file
  const count = Math.min(profile.readUInt32BE(128), MAX_TAGS)
  for (let at = 132; at + 12 <= profile.length && at < 132 + 12 * count; at += 12) {
    const start = profile.readUInt32BE(at + 4)
    tags.set(profile.toString('latin1', at, at + 4), profile.subarray(start, start + profile.readUInt32BE(at + 8)))
  }
  return tags
}
