/** Where the file says the photo was taken: degrees north and east, metres above sea level (null when not stated). */
export type PlaceClaim =
  | { kind: 'absent' }
  | { kind: 'claimed'; latitudeDeg: number; longitudeDeg: number; altitudeM: number | null }
  | { kind: 'invalid'; asRead: string }

export type GpsTags = {
  latitude: unknown
  latitudeRef: unknown
  longitude: unknown
  longitudeRef: unknown
  altitude: unknown
  altitudeRef: unknown
}

/**
 * Read a place from EXIF GPS tags: degrees, minutes and seconds with their hemisphere. A hemisphere that is not stated
 * is not assumed, and a place off the globe is reported as invalid with the tags as read.
 * @source CIPA DC-008 (Exif 2.32) 4.6.6 tags 1 to 6
 */
export function readPlace(gps: GpsTags): PlaceClaim {
  if (gps.latitude === undefined && gps.longitude === undefined) return { kind: 'absent' }
  const latitudeDeg = toDegrees(gps.latitude, gps.latitudeRef, 'N', 'S', 90)
  const longitudeDeg = toDegrees(gps.longitude, gps.longitudeRef, 'E', 'W', 180)
  if (latitudeDeg === null || longitudeDeg === null) {
    return {
      kind: 'invalid',
      asRead: JSON.stringify([gps.latitude, gps.latitudeRef, gps.longitude, gps.longitudeRef]).slice(0, 200),
    }
  }
  return { kind: 'claimed', latitudeDeg, longitudeDeg, altitudeM: toAltitude(gps.altitude, gps.altitudeRef) }
}

function toDegrees(
  parts: unknown,
  hemisphere: unknown,
  positive: string,
  negative: string,
  limitDeg: number,
): number | null {
  if (!Array.isArray(parts) || parts.length !== 3) return null
  const [degrees, minutes, seconds]: unknown[] = parts
  if (!isMagnitude(degrees) || !isMagnitude(minutes) || !isMagnitude(seconds)) return null
  if (minutes >= 60 || seconds >= 60) return null
  const deg = degrees + minutes / 60 + seconds / 3600
  if (deg > limitDeg || (hemisphere !== positive && hemisphere !== negative)) return null
  return hemisphere === negative && deg !== 0 ? -deg : deg
}

function toAltitude(metres: unknown, reference: unknown): number | null {
  if (!isMagnitude(metres)) return null
  const belowSea = reference instanceof Uint8Array ? reference[0] : reference
  if (belowSea === 1 && metres !== 0) return -metres
  return belowSea === undefined || belowSea === 0 || belowSea === 1 ? metres : null
}

function isMagnitude(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value) && value >= 0
}
