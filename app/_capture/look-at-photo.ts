import { greyOf, HINT_SIDE_PX, hintOf, type PhotoHint } from '@/lib/capture/photo-hint'

/** Look at a picture for a hint to who holds the camera; null when this browser cannot draw it (HEIC in most), which the server can. */
export async function lookAtPhoto(photo: Blob): Promise<PhotoHint | null> {
  try {
    const picture = await createImageBitmap(photo)
    const share = Math.min(1, HINT_SIDE_PX / Math.max(picture.width, picture.height))
    const canvas = document.createElement('canvas')
    canvas.width = Math.round(picture.width * share)
    canvas.height = Math.round(picture.height * share)
    const pen = canvas.getContext('2d', { willReadFrequently: true })
    if (!pen || canvas.width < 3 || canvas.height < 3) return null
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height)
    picture.close()
    const { data, width, height } = pen.getImageData(0, 0, canvas.width, canvas.height)
    return hintOf(greyOf(data, width, height))
  } catch (cause) {
    if (cause instanceof DOMException) return null
    throw cause
  }
}
