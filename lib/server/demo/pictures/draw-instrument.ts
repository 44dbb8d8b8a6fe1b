import type { Scene } from '../photo-drawing'
import { box, type Chance, drawText, turned } from './pen'

/** A round gauge face with its needle on the value, held to the work. */
export function drawDial(scene: Extract<Scene, { kind: 'dial' }>, chance: Chance): string {
  const radius = chance.between(170, 350)
  const x = chance.between(260, 920)
  const y = chance.between(290, 560)
  const dark = chance.next() > 0.5
  const ink = dark ? '#f4f4ee' : '#141414'
  const angleOf = (value: number) => -225 + (270 * (value - scene.from)) / (scene.to - scene.from)
  const on = (degrees: number, share: number) =>
    [
      x + radius * share * Math.cos((degrees * Math.PI) / 180),
      y + radius * share * Math.sin((degrees * Math.PI) / 180),
    ] as const
  const ticks = Array.from({ length: 51 }, (_, step) => {
    const degrees = -225 + (270 * step) / 50
    const [x1, y1] = on(degrees, step % 5 === 0 ? 0.78 : 0.86)
    const [x2, y2] = on(degrees, 0.92)
    return `<line x1="${x1.toFixed(1)}" y1="${y1.toFixed(1)}" x2="${x2.toFixed(1)}" y2="${y2.toFixed(1)}" stroke="${ink}" stroke-width="${step % 5 === 0 ? 6 : 2}"/>`
  })
  const figures = Array.from({ length: 6 }, (_, step) => {
    const value = scene.from + ((scene.to - scene.from) * step) / 5
    const [fx, fy] = on(angleOf(value), 0.62)
    return drawText(Number.isInteger(value) ? String(value) : value.toFixed(1), fx, fy + radius * 0.05, {
      size: radius * 0.14,
      fill: ink,
      anchor: 'middle',
    })
  })
  const needle = `<polygon points="0,-9 ${(radius * 0.8).toFixed(0)},0 0,9 -60,12 -60,-12" fill="#c8281e" transform="translate(${x} ${y}) rotate(${angleOf(scene.value).toFixed(2)})"/>`
  const face = [
    `<circle cx="${x + 14}" cy="${y + 18}" r="${radius * 1.1}" fill="#0007"/>`,
    `<circle cx="${x}" cy="${y}" r="${radius * 1.1}" fill="${chance.pick(['#8a8f94', '#b08d3c', '#2a2e31', '#c4c8cb'])}"/>`,
    `<circle cx="${x}" cy="${y}" r="${radius}" fill="${dark ? '#15191c' : '#fbfaf4'}"/>`,
    ...ticks,
    ...figures,
    drawText(scene.title, x, y + radius * 0.36, { size: radius * 0.15, fill: ink, anchor: 'middle' }),
    drawText(scene.unit, x, y + radius * 0.56, { size: radius * 0.11, fill: ink, anchor: 'middle' }),
    needle,
    `<circle cx="${x}" cy="${y}" r="26" fill="#333"/>`,
  ]
  const noteY = chance.pick([60, 800])
  const note = `${box(60, noteY, 60 + scene.note.length * 34, 74, '#fff7d6')}${drawText(scene.note, 90, noteY + 55, { size: 50 })}`
  return `${turned(box(x - radius * 0.28, y + radius, radius * 0.56, 900, '#41464a'), chance.between(-40, 40), x, y)}${turned(face.join(''), chance.between(-16, 16), x, y)}${note}`
}

/** A hand-held instrument with a lit display. */
export function drawDigital(scene: Extract<Scene, { kind: 'digital' }>, chance: Chance): string {
  const x = chance.between(170, 480)
  const y = chance.between(90, 250)
  const wide = chance.between(430, 610)
  const tall = chance.between(480, 720)
  const lit = chance.pick(['#b9d3a8', '#cfe6f5', '#f0e7b4', '#101c14'])
  const ink = lit === '#101c14' ? '#7dff9a' : '#10180f'
  const body = [
    box(x + 16, y + 22, wide, tall, '#0007', 'rx="40"'),
    box(x, y, wide, tall, chance.pick(['#22272b', '#d8a524', '#7b1f1f', '#2c4a63', '#e4e4de']), 'rx="40"'),
    box(x + 40, y + 60, wide - 80, tall * 0.42, lit, 'rx="10"'),
    ...scene.lines.map((line, step) =>
      drawText(line, x + wide / 2, y + 60 + tall * (0.19 + step * 0.18), {
        size: line.length > 6 ? 62 : 92,
        fill: ink,
        face: 'DejaVuSansMono-Bold',
        anchor: 'middle',
      }),
    ),
    drawText(scene.title, x + wide / 2, y + 45, { size: 30, fill: '#fff', anchor: 'middle' }),
    ...[0, 1, 2].map(
      (key) =>
        `<circle cx="${x + wide * (0.25 + key * 0.25)}" cy="${y + tall * 0.75}" r="38" fill="#55606a" stroke="#111" stroke-width="5"/>`,
    ),
  ]
  return `${turned(body.join(''), chance.between(-24, 24), x + wide / 2, y + tall / 2)}${box(820, 780, 340, 84, '#fff7d6')}${drawText(scene.note, 842, 836, { size: 36 })}`
}

/** The cure logger with its trace and the probe's lead to the pipe. */
export function drawLogger(scene: Extract<Scene, { kind: 'logger' }>, chance: Chance): string {
  const x = chance.between(80, 420)
  const y = chance.between(130, 330)
  const low = Math.min(...scene.series) - 2
  const high = Math.max(...scene.series) + 2
  const points = scene.series.map(
    (value, step) =>
      `${(x + 50 + (step * 500) / Math.max(1, scene.series.length - 1)).toFixed(0)},${(y + 330 - (260 * (value - low)) / (high - low)).toFixed(0)}`,
  )
  const body = [
    box(x, y, 600, 460, chance.pick(['#c9ccc6', '#394046', '#b58a2f']), 'rx="22"'),
    box(x + 40, y + 50, 520, 300, '#eaf2e4', 'rx="8"'),
    `<polyline points="${points.join(' ')}" fill="none" stroke="#a5301f" stroke-width="7"/>`,
    drawText('CL-08', x + 40, y + 415, { size: 46, fill: '#111' }),
    drawText(`${scene.series.at(-1) ?? ''} C`, x + 380, y + 415, { size: 46, fill: '#111' }),
  ]
  return `<path d="M${x + 560} ${y + 400} C 900 900, 1000 200, ${chance.between(1000, 1250)} ${chance.between(100, 800)}" stroke="#111" stroke-width="14" fill="none"/>${turned(body.join(''), chance.between(-12, 12), x + 300, y + 230)}${drawText(scene.note, 780, 120, { size: 44, fill: '#fff8d8' })}`
}
