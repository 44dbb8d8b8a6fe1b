import { hatchOf } from './hatch'
import type { LayerState, Place, Shape, StyleName } from './picture'
import { bendsBetween, heightAt, type ProfileLine } from './profile-line'
import { drawnMm, type SectionNumbers } from './section-numbers'
import type { SectionProfile } from './section-profile'

/** From millimetres of the section to the picture's pixels. */
export type SectionScale = { x: (mm: number) => number; y: (mm: number) => number }

/** A layer's area: hatched while open, solid once released, pale with a dashed edge where it fell. */
function layer(points: readonly Place[], style: StyleName, state: LayerState): Shape[] {
  const area: Shape = { kind: 'polygon', points, style, state }
  return state === 'open' ? [area, { kind: 'segments', segments: hatchOf(points, 9), style: 'hatch' }] : [area]
}

function between(top: ProfileLine, bottom: ProfileLine, fromMm: number, toMm: number, scale: SectionScale): Place[] {
  const xs = bendsBetween(fromMm, toMm, top, bottom)
  const along =
    (line: ProfileLine) =>
    (x: number): Place => [scale.x(x), scale.y(heightAt(line, x))]
  return [...xs.map(along(top)), ...xs.reverse().map(along(bottom))]
}

/** The steel on both sides of the hole, and the prepared surface over the wrap's length. */
export function steelShapes(
  numbers: SectionNumbers,
  profile: SectionProfile,
  scale: SectionScale,
  state: LayerState,
  prepared: LayerState,
): Shape[] {
  const edge = (numbers.holeMm ?? 0) / 2
  const { halfMm, outer, inner } = profile
  const parts =
    edge > 0
      ? ([
          [-halfMm, -edge],
          [edge, halfMm],
        ] as const)
      : ([[-halfMm, halfMm]] as const)
  const reach = profile.wrap ? Math.max(-profile.wrap.fromMm, profile.wrap.toMm) : 0
  const line = parts.map(
    ([from, to]): Shape => ({
      kind: 'polyline',
      style: 'surface',
      state: prepared,
      points: bendsBetween(Math.max(from, -reach), Math.min(to, reach), outer).map((x) => [
        scale.x(x),
        scale.y(heightAt(outer, x)),
      ]),
    }),
  )
  return [
    ...parts.flatMap(([from, to]) => layer(between(outer, inner, from, to, scale), 'steel', state)),
    ...(reach > 0 && prepared !== 'open' ? line : []),
  ]
}

/** Plug in the hole, with plate and band over it when the arrest is of that kind. */
export function plugShapes(
  numbers: SectionNumbers,
  profile: SectionProfile,
  scale: SectionScale,
  state: LayerState,
): Shape[] {
  if (!numbers.arrest) return []
  const edge = (numbers.holeMm ?? 4) / 2
  const [top, bottom] = [heightAt(profile.outer, 0), heightAt(profile.inner, 0)]
  const head = edge + Math.max(5, edge * 1.6)
  const rise = Math.max(top, heightAt(profile.outer, head), heightAt(profile.outer, -head))
  const at = (x: number, y: number): Place => [scale.x(x), scale.y(y)]
  const plug: Place[] = [
    at(-edge * 0.7, bottom),
    at(-edge, top),
    at(-head, heightAt(profile.outer, -head)),
    at(-head * 0.72, rise + 0.7),
    at(head * 0.72, rise + 0.7),
    at(head, heightAt(profile.outer, head)),
    at(edge, top),
    at(edge * 0.7, bottom),
  ]
  const { arrest } = numbers.arrest.record
  if (arrest.method !== 'plug, plate and band') return layer(plug, 'plug', state)
  const plate = Math.max(drawnMm(arrest.plateThickness), 0.5)
  const band = Math.max(drawnMm(arrest.bandThickness), 0.5)
  const bar = (half: number, from: number, thick: number): Place[] => [
    at(-half, from),
    at(half, from),
    at(half, from + thick),
    at(-half, from + thick),
  ]
  return [
    ...layer(plug, 'plug', state),
    ...layer(bar(head * 1.9, rise + 0.7, plate), 'plate', state),
    ...layer(bar(head * 1.25, rise + 0.7 + plate, band), 'plate', state),
  ]
}

/** The filler between the steel and its measured outer face. */
export function fillerShapes(profile: SectionProfile, scale: SectionScale, state: LayerState): Shape[] {
  if (!profile.filler) return []
  const from = profile.filler[0]?.[0] ?? 0
  const to = profile.filler.at(-1)?.[0] ?? 0
  return layer(between(profile.filler, profile.outer, from, to, scale), 'filler', state)
}

/** The wrap with a line for every ply: each ends where the taper leaves it. */
export function wrapShapes(
  numbers: SectionNumbers,
  profile: SectionProfile,
  scale: SectionScale,
  state: LayerState,
): Shape[] {
  const { wrap } = profile
  if (!wrap) return []
  const share = (x: number): number =>
    Math.max(
      0,
      Math.min(
        1,
        x < wrap.fullFromMm
          ? (x - wrap.fromMm) / (wrap.fullFromMm - wrap.fromMm)
          : x > wrap.fullToMm
            ? (wrap.toMm - x) / (wrap.toMm - wrap.fullToMm)
            : 1,
      ),
    )
  const base = wrapBase(profile)
  const xs = bendsBetween(
    wrap.fromMm,
    wrap.toMm,
    base,
    wrap.thickness,
    [
      [wrap.fullFromMm, 0],
      [wrap.fullToMm, 0],
    ],
    Array.from({ length: 41 }, (_, at) => [wrap.fromMm + ((wrap.toMm - wrap.fromMm) * at) / 40, 0] as const),
  )
  const face =
    (part: number) =>
    (x: number): Place => [scale.x(x), scale.y(heightAt(base, x) + heightAt(wrap.thickness, x) * part)]
  const area = [...xs.map((x) => face(share(x))(x)), ...[...xs].reverse().map(face(0))]
  const plies = Math.max(1, Math.round(numbers.wrap?.plies ?? 1))
  const lines = Array.from(
    { length: plies - 1 },
    (_, at): Shape => ({
      kind: 'polyline',
      style: 'ply',
      state,
      points: xs.filter((x) => share(x) >= (at + 1) / plies).map(face((at + 1) / plies)),
    }),
  )
  return [
    ...layer(area, 'wrap', state),
    ...lines,
    { kind: 'polyline', style: 'ply-outer', state, points: xs.map((x) => face(share(x))(x)) },
  ]
}

/** What the first ply lies on: the filler where there is some, the steel elsewhere. */
export function wrapBase({ outer, filler, halfMm }: SectionProfile): ProfileLine {
  if (!filler) return outer
  return bendsBetween(-halfMm, halfMm, outer, filler).map((x) => {
    const within = x >= (filler[0]?.[0] ?? 0) && x <= (filler.at(-1)?.[0] ?? 0)
    return [x, within ? Math.max(heightAt(outer, x), heightAt(filler, x)) : heightAt(outer, x)] as const
  })
}
