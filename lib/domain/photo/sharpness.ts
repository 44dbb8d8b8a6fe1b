/** A grey picture: one byte a pixel, row by row. */
export type GreyPicture = { pixels: Uint8Array; widthPx: number; heightPx: number }

/** Variance of the Laplacian (level²) of a grey picture: higher is sharper, like compared with like. Null under 3 px a side, where there is no edge to look at. */
export function sharpnessOf({ pixels, widthPx, heightPx }: GreyPicture): number | null {
  if (widthPx < 3 || heightPx < 3) return null
  let [sum, squares] = [0, 0]
  for (let y = 1; y < heightPx - 1; y++)
    for (let at = y * widthPx + 1, end = (y + 1) * widthPx - 1; at < end; at++) {
      const around =
        (pixels[at - 1] ?? 0) + (pixels[at + 1] ?? 0) + (pixels[at - widthPx] ?? 0) + (pixels[at + widthPx] ?? 0)
      const bend = 4 * (pixels[at] ?? 0) - around
      sum += bend
      squares += bend * bend
    }
  const count = (widthPx - 2) * (heightPx - 2)
  return squares / count - (sum / count) ** 2
}
