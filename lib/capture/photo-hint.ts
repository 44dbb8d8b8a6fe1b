import { type GreyPicture, sharpnessOf } from '@/lib/domain/photo/sharpness'

/** Longest side at which a picture is looked at for its hint: like is compared with like. */
export const HINT_SIDE_PX = 512
/** Variance of the Laplacian (level²) of a picture of that size under which edges are hardly seen. */
const BLURRED_UNDER = 40
/** Mean level, 0 to 255, under which little is seen. */
const DARK_UNDER = 45
const BRIGHT_OVER = 225

/** `looks` is a hint for who holds the camera, never a verdict: a plain wall is as smooth as a blurred one. */
export type PhotoHint = {
  looks: 'well' | 'blurred' | 'dark' | 'too bright'
  sharpness: number
  meanLevel: number
}

/** Look at a grey picture. @throws RangeError for one under 3 px a side */
export function hintOf(grey: GreyPicture): PhotoHint {
  const sharpness = sharpnessOf(grey)
  if (sharpness === null) throw new RangeError('a picture under 3 px a side has no edges to look at')
  const { pixels } = grey
  const meanLevel = pixels.reduce((sum, level) => sum + level, 0) / pixels.length
  const looks =
    meanLevel < DARK_UNDER
      ? 'dark'
      : meanLevel > BRIGHT_OVER
        ? 'too bright'
        : sharpness < BLURRED_UNDER
          ? 'blurred'
          : 'well'
  return { looks, sharpness, meanLevel }
}

/** Grey levels of a picture's colours (red, green, blue, opacity, a byte each), by their share in what the eye sees. */
export function greyOf(rgba: ArrayLike<number>, widthPx: number, heightPx: number): GreyPicture {
  const pixels = new Uint8Array(widthPx * heightPx)
  for (let at = 0; at < pixels.length; at++) {
    const [red, green, blue] = [rgba[at * 4] ?? 0, rgba[at * 4 + 1] ?? 0, rgba[at * 4 + 2] ?? 0]
    pixels[at] = Math.round(0.2126 * red + 0.7152 * green + 0.0722 * blue)
  }
  return { pixels, widthPx, heightPx }
}
