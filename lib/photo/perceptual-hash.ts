import { fromRaster, type Raster } from '@/lib/photo/picture-engine'

const DCT_SIDE = 32
const COSINES = Array.from({ length: 8 }, (_, u) =>
  Float64Array.from({ length: DCT_SIDE }, (_, x) => Math.cos(((2 * x + 1) * u * Math.PI) / (2 * DCT_SIDE))),
)

/** Two 64-bit hashes of how a picture looks, 16 hex digits each; alike pictures differ in few bits. */
export type PerceptualHashes = { dHash: string; pHash: string }

/** Hash a grey picture: dHash by brightness steps along rows of 9 × 8, pHash by the lowest 8 × 8 cosine terms of 32 × 32. */
export async function hashLook(grey: Raster): Promise<PerceptualHashes> {
  const [steps, waves] = await Promise.all([squeeze(grey, 9, 8), squeeze(grey, DCT_SIDE, DCT_SIDE)])
  return { dHash: toHex(brightnessSteps(steps)), pHash: toHex(aboveMedian(lowestTerms(waves))) }
}

async function squeeze(grey: Raster, width: number, height: number): Promise<Uint8Array> {
  return fromRaster(grey).resize(width, height, { fit: 'fill' }).extractChannel(0).raw().toBuffer()
}

function brightnessSteps(levels: Uint8Array): boolean[] {
  return Array.from({ length: 64 }, (_, bit) => {
    const at = Math.floor(bit / 8) * 9 + (bit % 8)
    return (levels[at] ?? 0) < (levels[at + 1] ?? 0)
  })
}

function lowestTerms(levels: Uint8Array): number[] {
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
  const digits: string[] = []
  for (let at = 0; at < bits.length; at += 4)
    digits.push(
      Number.parseInt(
        bits
          .slice(at, at + 4)
          .map(Number)
          .join(''),
        2,
      ).toString(16),
    )
  return digits.join('')
}
