import { nodeHasher } from '@/lib/cli/file-source'
import { sourceOfBytes } from '@/lib/verify/byte-source'
import { verifyFile } from '@/lib/verify/verify-file'

/** Numbers from 0 up to a bound, the same ones for the same seed. */
export function seededNumbers(seed: number): (below: number) => number {
  let state = seed >>> 0
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return Math.floor((state / 2 ** 32) * below)
  }
}

/**
 * Change one byte after the other, each back again, and check the whole file every time as a reader would, but to the first break.
 * @returns the offsets, with what was put there, at which the answer was still intact
 */
export async function flipsNotSeen(
  file: Uint8Array,
  places: Iterable<number>,
  othersOf: (byte: number) => number[],
): Promise<{ checkedCount: number; notSeen: string[] }> {
  const source = sourceOfBytes(file)
  const notSeen: string[] = []
  let checkedCount = 0
  for (const at of places) {
    const byte = file[at] ?? 0
    for (const other of othersOf(byte)) {
      file[at] = other
      const { answer } = await verifyFile(source, { hasher: nodeHasher, stopAtFirst: true })
      checkedCount += 1
      if (answer === 'intact') notSeen.push(`offset ${at}: ${byte} to ${other}`)
    }
    file[at] = byte
  }
  return { checkedCount, notSeen }
}

/** Offsets of all that is not the inside of a stream: head, numbers, dictionaries, the signature's digits, table, trailer. */
export function structuralPlaces(file: Uint8Array): number[] {
  const text = Buffer.from(file).toString('latin1')
  const places: number[] = []
  for (let at = 0; at < file.length; ) {
    const stream = text.indexOf('\nstream\n', at)
    const from = stream < 0 ? file.length : stream + '\nstream\n'.length
    for (; at < from; at += 1) places.push(at)
    if (stream < 0) break
    const length = Number(/\/Length (\d+) >>$/.exec(text.slice(stream - 24, stream))?.[1])
    at = from + length
  }
  return places
}
