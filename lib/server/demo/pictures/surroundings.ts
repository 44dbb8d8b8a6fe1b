import type { PhotoDrawing } from '../photo-drawing'
import { box, type Chance, drawText, FRAME, turned } from './pen'

const STONE = ['#4a4640', '#5b5a57', '#3a3f44', '#6b6256', '#2f3336', '#7c7a73', '#8a8378'] as const

/** Rock, masonry or steel sheet behind the work, other pipes and cable trays, and the pool of a lamp: laid out anew for each photo. */
export function drawSurroundings(chance: Chance): string {
  const { width, height } = FRAME
  const parts = [box(0, 0, width, height, chance.pick(STONE))]
  const split = chance.between(0.2, 0.8)
  const across = chance.next() > 0.5
  parts.push(
    across
      ? box(0, height * split, width, height, chance.pick(STONE))
      : box(width * split, 0, width, height, chance.pick(STONE)),
  )
  const courses = Math.floor(chance.between(0, 9))
  for (let course = 1; course < courses; course += 1) parts.push(box(0, (height / courses) * course, width, 5, '#0006'))
  const others = Math.floor(chance.between(1, 5))
  for (let other = 0; other < others; other += 1) {
    const wide = chance.between(40, 190)
    const at = chance.between(-60, width)
    parts.push(
      turned(
        box(
          at,
          -300,
          wide,
          height + 600,
          chance.pick(['#22282c', '#9a8f7c', '#c9c4b8', '#5a3d2a', '#77868f', '#d9b43a']),
        ),
        chance.between(-35, 35) + (chance.next() > 0.6 ? 90 : 0),
        at,
        height / 2,
      ),
    )
  }
  for (let patch = 0; patch < 6; patch += 1) {
    const tint = chance.pick(['dark', 'light', 'brown', 'pale'])
    parts.push(
      `<ellipse cx="${chance.between(0, width).toFixed(0)}" cy="${chance.between(0, height).toFixed(0)}" rx="${chance.between(120, 560).toFixed(0)}" ry="${chance.between(100, 420).toFixed(0)}" fill="url(#${tint})" opacity="${chance.between(0.15, 0.6).toFixed(2)}"/>`,
    )
  }
  return parts.join('')
}

/** Lamp light and dark corners laid over all, and grain as a small sensor gives it. */
export function drawLight(chance: Chance): string {
  const { width, height } = FRAME
  const x = chance.between(0.1, 0.9)
  const y = chance.between(0.1, 0.9)
  return `<defs><radialGradient id="lamp" cx="${x.toFixed(2)}" cy="${y.toFixed(2)}" r="${chance.between(0.55, 1.05).toFixed(2)}"><stop offset="0" stop-color="#fff6df" stop-opacity="${chance.between(0.12, 0.42).toFixed(2)}"/><stop offset="0.5" stop-color="#000" stop-opacity="0"/><stop offset="1" stop-color="#000" stop-opacity="${chance.between(0.35, 0.72).toFixed(2)}"/></radialGradient></defs>${box(0, 0, width, height, 'url(#lamp)')}`
}

const TINTS = { dark: '#000', light: '#fff', brown: '#1a120a', pale: '#e9e2cf' } as const

/** Soft patches that the pictures share: gradients, because blurring costs seconds a picture. */
export const SHARED = `<defs>${Object.entries(TINTS)
  .map(
    ([name, colour]) =>
      `<radialGradient id="${name}"><stop offset="0" stop-color="${colour}"/><stop offset="1" stop-color="${colour}" stop-opacity="0"/></radialGradient>`,
  )
  .join('')}</defs>`

/** The board that stands in view: repair, point and time as the record has them. */
export function drawBoard(drawing: PhotoDrawing, chance: Chance, shownPoint = drawing.point): string {
  const x = chance.pick([40, 60, 760, 820])
  const y = chance.pick([50, 90, 660, 690])
  const content = [
    box(x + 7, y + 9, 330, 150, '#0007'),
    box(x, y, 330, 150, '#f6f3e8', 'rx="6"'),
    box(x, y, 330, 34, '#23415c', 'rx="6"'),
    drawText('REPAIR', x + 14, y + 25, { size: 18, fill: '#fff' }),
    drawText(`POINT ${shownPoint}`, x + 200, y + 25, { size: 18, fill: '#fff' }),
    drawText(drawing.repair, x + 14, y + 88, { size: 50 }),
    drawText(`${drawing.takenAt.slice(0, 10)} ${drawing.takenAt.slice(11, 16)}`, x + 14, y + 132, {
      size: 27,
      face: 'DejaVuSansMono-Bold',
    }),
  ]
  return turned(content.join(''), chance.between(-7, 7), x + 165, y + 75)
}

/** A scale bar of 10 mm steps: `pxPerMm` says how large the place is shown. */
export function drawScaleBar(chance: Chance, pxPerMm: number): string {
  const x = chance.between(400, 500)
  const y = chance.pick([60, 800])
  const step = Math.max(36, 10 * pxPerMm)
  const bars = Array.from({ length: 5 }, (_, at) =>
    box(x + at * step, y, step, 22, at % 2 === 0 ? '#0b0b0b' : '#fafafa'),
  )
  return `${box(x - 8, y - 8, step * 5 + 16, 70, '#f2efe4')}${bars.join('')}${drawText('0', x, y + 52, { size: 24 })}${drawText('50 mm', x + step * 5 - 92, y + 52, { size: 24 })}`
}
