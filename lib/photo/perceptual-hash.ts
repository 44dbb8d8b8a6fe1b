import type { Raster } from '@/lib/photo/picture-engine'

const DCT_SIDE = 32
const COSINES = Array.from({ length: 8 }, (_, u) =>
  Float64Array.from({ length: DCT_SIDE }, (_, x) => Math.cos(((2 * x + 1) * u * Math.PI) / (2 * DCT_SIDE))),
)

/** Two 64-bit hashes of how a picture looks, 16 hex digits each; alike pictures differ in few bits. */
export type PerceptualHashes = { dHash: string; pHash: string }

/** Hash a grey picture: dHash by brightness steps along rows of 9 × 8, pHash by the lowest 8 × 8 cosine terms of 32 × 32. */
export function hashLook(grey: Raster): PerceptualHashes {
  return {
    dHash: toHex(brightnessSteps(averageCells(grey, 9, 8))),
    pHash: toHex(aboveMedian(lowestTerms(averageCells(grey, DCT_SIDE, DCT_SIDE)))),
  }
}

/** The mean level of each cell of a grid laid over the picture; a cell narrower than a pixel takes the pixel under it. */
function averageCells({ pixels, widthPx, heightPx }: Raster, columns: number, rows: number): Float64Array {
  const means = new Float64Array(columns * rows)
  for (let row = 0; row < rows; row++) {
    const top = Math.floor((row * heightPx) / rows)
    const bottom = Math.max(top + 1, Math.floor(((row + 1) * heightPx) / rows))
    for (let column = 0; column < columns; column++) {
      const left = Math.floor((column * widthPx) / columns)
      const right = Math.max(left + 1, Math.floor(((column + 1) * widthPx) / columns))
      let sum = 0
      for (let y = top; y < bottom; y++) {
        for (let at = y * widthPx + left, end = y * widthPx + right; at < end; at++) sum += pixels[at] ?? 0
      }
      means[row * columns + column] = Math.round(sum / ((bottom - top) * (right - left)))
    }
  }
  return means
}

function brightnessSteps(levels: Float64Array): boolean[] {
  return Array.from({ length: 64 }, (_, bit) => {
    const at = Math.floor(bit / 8) * 9 + (bit % 8)
    return (levels[at] ?? 0) < (levels[at + 1] ?? 0)
  })
}

function lowestTerms(levels: Float64Array): number[] {
  return COSINES.flatMap((down) =>
    COSINES.map((across) => {
      let sum = 0
      for (let y = 0; y < DCT_SIDE; y++) {
        let row = 0
        for (let x = 0; x < DCT_SIDE; x++) row += (levels[y * DCT_SIDE + x] ?? 0) * (across[x] ?? 0)
        sum += row * (down[y] ?? 0)
      }
      return sum
    }),
  )
}

function aboveMedian(terms: number[]): boolean[] {
  // the first term is the mean brightness and says nothing of the look
  const median = terms.slice(1).sort((a, b) => a - b)[31] ?? 0
  return terms.map((term) => term > median)
}

function toHex(bits: boolean[]): string {
  return Array.from({ length: bits.length / 4 }, (_, digit) => {
    const four = bits.slice(4 * digit, 4 * digit + 4)
    return Number.parseInt(four.map(Number).join(''), 2).toString(16)
  }).join('')
}
