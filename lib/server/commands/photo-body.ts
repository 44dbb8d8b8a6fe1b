import { PhotoIntakeBody } from '@/lib/domain/facts/photo-intake-body'
import { done, type Result, refused } from '@/lib/domain/result'
import type { PhotoIntake } from '@/lib/photo/photo-intake'

const CAMERA_TEXT_LENGTH = 120

/**
 * What a fact keeps of a photo taken in: digests, sizes, claims and measures. Refuses `too-small` for a picture of under 3 pixels a side: it cannot be
 * measured and shows nothing.
 */
export function photoBodyOf(photo: PhotoIntake): Result<PhotoIntakeBody, { code: 'too-small' }> {
  const { sharpness, exposure, dHash, pHash } = photo.measures
  if (sharpness === null) return refused({ code: 'too-small' })
  const { takenAt, place, camera, isWithoutOriginal } = photo.claims
  const cameraText = [camera.make, camera.model]
    .filter((text) => text !== null)
    .join(' ')
    .slice(0, CAMERA_TEXT_LENGTH)
  return done(
    PhotoIntakeBody.parse({
      sha256: photo.sha256,
      sizeBytes: photo.sizeBytes,
      mediaType: `image/${photo.type}`,
      widthPx: photo.widthPx,
      heightPx: photo.heightPx,
      rendition: photo.rendition,
      thumb: photo.thumb,
      claims: {
        takenAt: takenAt.kind === 'claimed' ? takenAt.text : null,
        offset: takenAt.kind === 'claimed' && takenAt.hasOffset ? takenAt.offsetAsRead : null,
        latitude: place.kind === 'claimed' ? place.latitudeDeg : null,
        longitude: place.kind === 'claimed' ? place.longitudeDeg : null,
        camera: cameraText || null,
        hasOriginalMetadata: !isWithoutOriginal,
      },
      measures: {
        sharpness,
        meanLightness: exposure.meanLevel,
        shareDark: exposure.darkShare,
        shareBright: exposure.brightShare,
        dHash,
        pHash,
      },
    }),
  )
}
