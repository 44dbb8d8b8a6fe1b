import exifr from 'exifr'
import { type PlaceClaim, readPlace } from '@/lib/photo/place-claim'
import { combineTakenAt, type TakenAtClaim } from '@/lib/photo/taken-at-claim'

/**
 * What a photo file says of itself. Nothing here is proved: a clock may be wrong and any tag may be written by anyone.
 * `isWithoutOriginal` marks a file that names neither a time taken nor a camera, as copies through chat programs do.
 */
export type PhotoClaims = {
  metadata: 'read' | 'absent' | 'unreadable'
  takenAt: TakenAtClaim
  place: PlaceClaim
  camera: { make: string | null; model: string | null; software: string | null }
  orientationTag: number | null
  isWithoutOriginal: boolean
}

const MAX_EXIF_BYTES = 1 << 20
const MAX_TEXT_LENGTH = 200
const EXIF_PREFIX = 'Exif\0\0'
const READ_TAGS = {
  reviveValues: false,
  translateValues: false,
  xmp: false,
  icc: false,
  iptc: false,
  ifd1: false,
  interop: false,
  pick: [
    ...['Make', 'Model', 'Software', 'Orientation', 'DateTimeOriginal', 'OffsetTimeOriginal', 'SubSecTimeOriginal'],
    ...['GPSLatitude', 'GPSLatitudeRef', 'GPSLongitude', 'GPSLongitudeRef', 'GPSAltitude', 'GPSAltitudeRef'],
  ],
}

/**
 * Read the claims out of a photo's EXIF block; texts longer than 200 characters are cut. Damaged EXIF gives
 * `unreadable` claims and never throws.
 * @param exif the block as stored in the photo, with or without its `Exif` prefix; undefined when the photo has none
 */
export async function readPhotoClaims(exif: Uint8Array | undefined): Promise<PhotoClaims> {
  if (exif === undefined || exif.length === 0) return toClaims({}, 'absent')
  if (exif.length > MAX_EXIF_BYTES) return toClaims({}, 'unreadable')
  try {
    const tags: unknown = await exifr.parse(withoutPrefix(exif), READ_TAGS)
    return toClaims(isRecord(tags) ? tags : {}, 'read')
  } catch {
    // the reader throws plain errors of many kinds at damaged blocks, and all mean the same here
    return toClaims({}, 'unreadable')
  }
}

function toClaims(tags: Record<string, unknown>, metadata: PhotoClaims['metadata']): PhotoClaims {
  const takenAt = combineTakenAt(
    toText(tags.DateTimeOriginal),
    toText(tags.SubSecTimeOriginal),
    toText(tags.OffsetTimeOriginal),
  )
  const camera = { make: toText(tags.Make), model: toText(tags.Model), software: toText(tags.Software) }
  return {
    metadata,
    takenAt,
    place: readPlace({
      latitude: tags.GPSLatitude,
      latitudeRef: tags.GPSLatitudeRef,
      longitude: tags.GPSLongitude,
      longitudeRef: tags.GPSLongitudeRef,
      altitude: tags.GPSAltitude,
      altitudeRef: tags.GPSAltitudeRef,
    }),
    camera,
    orientationTag: Number.isInteger(tags.Orientation) ? Number(tags.Orientation) : null,
    isWithoutOriginal: takenAt.kind === 'absent' && camera.make === null && camera.model === null,
  }
}

function withoutPrefix(exif: Uint8Array): Buffer {
  const block = Buffer.from(exif.buffer, exif.byteOffset, exif.length)
  return block.toString('latin1', 0, EXIF_PREFIX.length) === EXIF_PREFIX ? block.subarray(EXIF_PREFIX.length) : block
}

function toText(value: unknown): string | null {
  if (typeof value !== 'string') return null
  const text = value.replaceAll('\0', '').trim().slice(0, MAX_TEXT_LENGTH)
  return text === '' ? null : text
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null
}
