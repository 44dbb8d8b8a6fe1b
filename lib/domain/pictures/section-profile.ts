import { heightAt, type ProfileLine } from './profile-line'
import type { RowReading, SectionNumbers } from './section-numbers'

/**
 * The lines that bound the layers, in mm: x from the leak along the pipe, y from the sound outer surface, outwards positive. `filler` and `wrap` are the
 * outer faces. Where a number is missing a plain shape stands in and the callout says so.
 */
export type SectionProfile = {
  halfMm: number
  outer: ProfileLine
  inner: ProfileLine
  filler: ProfileLine | null
  /** Ends of the wrap and of its full thickness. */
  wrap: { fromMm: number; toMm: number; fullFromMm: number; fullToMm: number; thickness: ProfileLine } | null
}

const PLAIN_WALL_MM = 8
const PLAIN_HALF_MM = 150

/** Lines of the section from its numbers. */
export function sectionProfile(numbers: SectionNumbers): SectionProfile {
  const nominal = numbers.wallMm ?? PLAIN_WALL_MM
  const wrapHalf = numbers.totalMm ? numbers.totalMm / 2 + Math.abs(numbers.offsetMm) : 0
  const halfMm = Math.max(
    wrapHalf * 1.07,
    ...numbers.wall.map((one) => Math.abs(one.xMm) * 1.12),
    wrapHalf === 0 && numbers.wall.length === 0 ? PLAIN_HALF_MM : 0,
  )
  const remaining = wallLine(numbers, nominal, halfMm)
  const outer = numbers.isLossOutside
    ? remaining.map(([x, wall]) => [x, wall - nominal] as const)
    : ([
        [-halfMm, 0],
        [halfMm, 0],
      ] as const)
  const lowered = withBefore(outer, numbers.filler?.beforeMm ?? [])
  const inner = numbers.isLossOutside
    ? ([
        [-halfMm, -nominal],
        [halfMm, -nominal],
      ] as const)
    : remaining.map(([x, wall]) => [x, Math.max(-nominal, heightAt(lowered, x) - wall)] as const)
  return { halfMm, outer: lowered, inner, filler: fillerLine(numbers, lowered), wrap: wrapLines(numbers) }
}

/** Remaining wall along the row. Towards a hole the wall keeps the lower of its neighbours: no reading lies nearer. */
function wallLine(numbers: SectionNumbers, nominal: number, halfMm: number): ProfileLine {
  const known = numbers.wall.flatMap(({ xMm, mm }) => (mm === null ? [] : [[xMm, mm] as const]))
  if (known.length === 0)
    return [
      [-halfMm, nominal],
      [halfMm, nominal],
    ]
  const left = known.filter(([x]) => x < 0).at(-1)?.[1]
  const right = known.find(([x]) => x > 0)?.[1]
  const edge = (numbers.holeMm ?? 0) / 2
  const atHole = numbers.wall.some(({ xMm, mm }) => xMm === 0 && mm === null)
  if (!atHole || edge === 0) return known
  const thin = Math.min(left ?? nominal, right ?? nominal) * 0.86
  return [...known.filter(([x]) => x < -edge), [-edge, thin], [edge, thin], ...known.filter(([x]) => x > edge)]
}

/** Heights read before filling are the surface itself near the hole; where the wall reading lies deeper, the deeper one is drawn. */
function withBefore(outer: ProfileLine, before: readonly RowReading[]): ProfileLine {
  const read = before.flatMap(({ xMm, mm }) =>
    mm === null ? [] : [[xMm, Math.min(mm, heightAt(outer, xMm))] as const],
  )
  const [first, last] = [read[0], read.at(-1)]
  if (!first || !last) return outer
  return [...outer.filter(([x]) => x < first[0]), ...read, ...outer.filter(([x]) => x > last[0])]
}

function fillerLine(numbers: SectionNumbers, outer: ProfileLine): ProfileLine | null {
  if (!numbers.filler) return null
  const read = numbers.filler.afterMm.flatMap(({ xMm, mm }) => (mm === null ? [] : [[xMm, mm] as const]))
  const [first, last] = [read[0], read.at(-1)]
  const reach = Math.max((numbers.defectMm ?? 60) / 2, ...read.map(([x]) => Math.abs(x) + 14))
  if (!first || !last)
    return [
      [-reach, heightAt(outer, -reach)],
      [-reach / 2, 2],
      [reach / 2, 2],
      [reach, heightAt(outer, reach)],
    ]
  return [[-reach, heightAt(outer, -reach)], ...read, [reach, heightAt(outer, reach)]]
}

function wrapLines(numbers: SectionNumbers): SectionProfile['wrap'] {
  if (!numbers.wrap || numbers.totalMm === null || numbers.wrap.thicknessMm === null) return null
  const fromMm = numbers.offsetMm - numbers.totalMm / 2
  const toMm = numbers.offsetMm + numbers.totalMm / 2
  const read = numbers.wrap.row.flatMap(({ xMm, mm }) => (mm === null ? [] : [[xMm, mm] as const]))
  return {
    fromMm,
    toMm,
    fullFromMm: fromMm + (numbers.taperLeftMm ?? 0),
    fullToMm: toMm - (numbers.taperRightMm ?? 0),
    thickness: read.length > 0 ? read : [[0, numbers.wrap.thicknessMm]],
  }
}
