import type { RepairState } from '../fold/repair-state'
import { showReading } from '../reading'
import { layerStateOf, layerWords } from './layer-state'
import type { Shape } from './picture'
import { heightAt } from './profile-line'
import { type SectionScale, wrapBase } from './section-layers'
import type { SectionNumbers } from './section-numbers'
import type { SectionProfile } from './section-profile'

/** Points each layer of the picture is about. */
export const LAYER_POINTS = {
  steel: ['01'],
  surface: ['05', '06', '07'],
  plug: ['08', '09'],
  filler: ['10', '11', '12'],
  wrap: ['14', '15', '16', '17'],
} as const

type Callout = {
  at: readonly [number, number]
  to: readonly [number, number]
  anchor: 'start' | 'end'
  text: string
  note: string
}

function calloutShapes({ at, to, anchor, text, note }: Callout): Shape[] {
  const shift = anchor === 'start' ? 7 : -7
  const bar: readonly [number, number] = at[1] > to[1] ? [20, -11] : [-12, 19]
  return [
    { kind: 'polyline', style: 'leader', points: [at, [to[0], to[1] + bar[0]], [to[0], to[1] + bar[1]]] },
    { kind: 'circle', x: at[0], y: at[1], radiusPx: 2.4, style: 'dot' },
    { kind: 'text', x: to[0] + shift, y: to[1] + 1, text, style: 'callout', anchor },
    { kind: 'text', x: to[0] + shift, y: to[1] + 16, text: note, style: 'note', anchor },
  ]
}

/** Names of the layers with their numbers and states, led to the layer itself. */
export function calloutsOf(
  state: RepairState,
  numbers: SectionNumbers,
  profile: SectionProfile,
  scale: SectionScale,
  size: { widthPx: number; heightPx: number },
): Shape[] {
  const words = (points: readonly string[], from: Parameters<typeof layerStateOf>[2]): string =>
    layerWords(state, points, layerStateOf(state, points, from))
  const { widthPx, heightPx } = size
  const callouts: Callout[] = []
  const steelX = -profile.halfMm * 0.72
  const steelText =
    numbers.wallMm === null
      ? 'Steel, not yet measured'
      : `Steel ${state.defect ? showReading(state.defect.nominalWall) : numbers.wallMm} mm`
  const loss = state.defect
    ? `${numbers.isLossOutside ? 'loss outside' : 'loss inside'}, ${state.defect.cause}`
    : 'no defect record'
  callouts.push({
    at: [scale.x(steelX), scale.y((heightAt(profile.outer, steelX) + heightAt(profile.inner, steelX)) / 2)],
    to: [52, heightPx - 27],
    anchor: 'start',
    text: steelText,
    note: loss,
  })
  if (numbers.arrest) {
    const method = numbers.arrest.record.arrest.method
    const text = method === 'plug, plate and band' ? 'Plug, plate and band' : `Arrest: ${method}`
    callouts.push({
      at: [scale.x(0), scale.y(heightAt(profile.outer, 0) - 0.8)],
      to: [widthPx * 0.6, heightPx - 27],
      anchor: 'start',
      text,
      note: [numbers.watchText, words(LAYER_POINTS.plug, numbers.arrest.attempt)].filter(Boolean).join(', '),
    })
  }
  if (numbers.filler && profile.filler) {
    const x = -Math.min(20, (numbers.defectMm ?? 40) / 3)
    callouts.push({
      at: [scale.x(x), scale.y((heightAt(profile.filler, x) + heightAt(profile.outer, x)) / 2)],
      to: [widthPx * 0.36, 18],
      anchor: 'end',
      text: numbers.filler.overHoleText
        ? `Filler ${numbers.filler.overHoleText} mm over the hole`
        : 'Filler, not measured',
      note: words(LAYER_POINTS.filler, numbers.filler.attempt),
    })
  }
  if (numbers.wrap && profile.wrap) {
    const x = profile.wrap.fullToMm - profile.wrap.fullToMm * 0.3
    const y = heightAt(wrapBase(profile), x) + heightAt(profile.wrap.thickness, x) * 0.6
    const made = numbers.wrap.attempt ? '' : ' by design'
    callouts.push({
      at: [scale.x(x), scale.y(y)],
      to: [widthPx * 0.62, 18],
      anchor: 'start',
      text: numbers.wrap.plies === null ? 'Wrap' : `Wrap, ${numbers.wrap.plies} plies${made}`,
      note: [numbers.wrap.text, words(LAYER_POINTS.wrap, numbers.wrap.attempt)].filter(Boolean).join(', '),
    })
  }
  return callouts.flatMap(calloutShapes)
}

/** Lengths along the top: taper, overlap, defect, overlap, taper, and the whole length as built. */
export function dimensionsOf(
  numbers: SectionNumbers,
  profile: SectionProfile,
  scale: SectionScale,
  yPx: number,
): Shape[] {
  const { wrap } = profile
  if (!wrap || numbers.totalMm === null) return []
  const half = (numbers.defectMm ?? 0) / 2
  const ends = [wrap.fromMm, wrap.fullFromMm, ...(half > 0 ? [-half, half] : []), wrap.fullToMm, wrap.toMm]
  const piece = (from: number, to: number, y: number, text: string): Shape[] => [
    {
      kind: 'segments',
      style: 'dimension',
      segments: [
        [
          [scale.x(from), y - 5],
          [scale.x(from), y + 5],
        ],
        [
          [scale.x(to), y - 5],
          [scale.x(to), y + 5],
        ],
        [
          [scale.x(from), y],
          [scale.x(to), y],
        ],
      ],
    },
    { kind: 'text', x: (scale.x(from) + scale.x(to)) / 2, y: y - 5, text, style: 'figure', anchor: 'middle' },
  ]
  const shown = (mm: number): string => String(Math.round(mm * 10) / 10)
  return [
    ...ends.slice(1).flatMap((to, index) => piece(ends[index] ?? to, to, yPx, shown(to - (ends[index] ?? to)))),
    ...piece(
      wrap.fromMm,
      wrap.toMm,
      yPx - 19,
      `${shown(numbers.totalMm)} ${numbers.isAsBuilt ? 'as built' : 'by design'}`,
    ),
  ]
}

/** Wall readings of the leak's clock row under the steel, each at its station. */
export function wallReadings(numbers: SectionNumbers, scale: SectionScale, yPx: number): Shape[] {
  return numbers.wall.flatMap((one): Shape[] => [
    { kind: 'text', x: scale.x(one.xMm), y: yPx, text: one.text, style: 'figure', anchor: 'middle' },
    {
      kind: 'segments',
      style: 'dimension',
      segments: [
        [
          [scale.x(one.xMm), yPx - 17],
          [scale.x(one.xMm), yPx - 12],
        ],
      ],
    },
  ])
}
