/** What a fact keeps of a photo: one digest of one digit repeated, for original and renditions. */
export function photoBody(hash: string) {
  const size = { sha256: hash.repeat(64), sizeBytes: 1000, widthPx: 10, heightPx: 10 }
  return {
    ...size,
    mediaType: 'image/jpeg',
    rendition: size,
    thumb: size,
    claims: { takenAt: null, offset: null, latitude: null, longitude: null, camera: null, hasOriginalMetadata: true },
    measures: {
      sharpness: 1,
      meanLightness: 0.5,
      shareDark: 0,
      shareBright: 0,
      dHash: '0'.repeat(16),
      pHash: '0'.repeat(16),
    },
  }
}
