import type { Scene } from '../photo-drawing'
import { box, type Chance, drawText, turned } from './pen'

/** A package with its label, legible, and the whole of it in view. */
export function drawPackage(scene: Extract<Scene, { kind: 'package' }>, chance: Chance): string {
  const x = chance.between(230, 420)
  const y = chance.between(130, 230)
  const wide = chance.between(460, 620)
  const round = chance.next() > 0.5
  const tub = chance.pick(['#dfe4e8', '#2f4f6f', '#8c2f22', '#d9b43a', '#4a5a3a'])
  const content = [
    round
      ? `<ellipse cx="${x + wide / 2}" cy="${y + 20}" rx="${wide / 2}" ry="60" fill="#eee"/>`
      : box(x - 20, y - 30, wide + 40, 80, '#f0efe9'),
    box(x, y + 20, wide, 580, tub),
    box(x + 40, y + 130, wide - 80, 330, '#fbfaf5'),
    ...scene.lines.map((line, step) =>
      drawText(line, x + 64, y + 190 + step * 62, {
        size: Math.min(52, (1.5 * (wide - 130)) / Math.max(1, line.length)),
      }),
    ),
    ...Array.from({ length: 44 }, (_, step) => box(x + 64 + step * 8, y + 400, chance.between(2, 6), 46, '#111')),
  ]
  return turned(content.join(''), chance.between(-14, 14), x + wide / 2, y + 300)
}

/** The scale with both parts and the batch labels beside their readings. */
export function drawScale(scene: Extract<Scene, { kind: 'scale' }>, chance: Chance): string {
  const y = chance.between(480, 600)
  const from = chance.between(60, 160)
  const pots = scene.readings.flatMap((reading, step) => {
    const x = from + 60 + step * chance.between(400, 470)
    const tall = step === 0 ? 300 : 220
    return [
      box(x, y - tall, 300, tall, chance.pick(['#e9e3cf', '#c6a56a', '#88929a', '#d9d9d9']), 'rx="18"'),
      box(x + 30, y - tall * 0.7, 240, 100, '#fff'),
      drawText(scene.labels[step] ?? '', x + 46, y - tall * 0.7 + 66, { size: 42 }),
      box(x + 20, y + 80, 250, 100, '#12241a', 'rx="8"'),
      drawText(reading, x + 40, y + 152, { size: 62, fill: '#8dffb0', face: 'DejaVuSansMono-Bold' }),
    ]
  })
  return turned(
    [box(from, y, 960, 220, '#aab0b4', 'rx="24"'), ...pots, drawText('WB-09', from + 820, y + 205, { size: 28 })].join(
      '',
    ),
    chance.between(-8, 8),
    600,
    y,
  )
}

/** A paper board such as the permit's: no private data on it. */
export function drawPaper(scene: Extract<Scene, { kind: 'board' }>, chance: Chance): string {
  const x = chance.between(150, 480)
  const y = chance.between(60, 150)
  const wide = chance.between(540, 660)
  const content = [
    box(x + 14, y + 18, wide, 720, '#0007'),
    box(x, y, wide, 720, chance.pick(['#8b5a2b', '#33414c', '#7a7f83'])),
    box(x + 30, y + 50, wide - 60, 640, '#fdfcf6'),
    box(x + wide / 2 - 90, y - 20, 180, 80, '#9aa1a6', 'rx="10"'),
    box(x + 30, y + 70, wide - 60, 90, chance.pick(['#c8281e', '#1f5f8b', '#2e7d3a'])),
    drawText(scene.title, x + 60, y + 132, { size: 44, fill: '#fff' }),
    ...scene.lines.map((line, step) =>
      drawText(line, x + 60, y + 250 + step * 90, { size: Math.min(46, (1.45 * (wide - 120)) / line.length) }),
    ),
    ...Array.from({ length: 3 }, (_, step) =>
      box(x + 60, y + 590 + step * 30, (wide - 120) * chance.between(0.4, 0.9), 6, '#99a'),
    ),
  ]
  return turned(content.join(''), chance.between(-11, 11), x + wide / 2, y + 360)
}

/** A dry white wipe beside a clock that shows the time. */
export function drawWipe(scene: Extract<Scene, { kind: 'wipe' }>, chance: Chance): string {
  const [hours = 0, minutes = 0] = scene.clock.split(':').map(Number)
  const x = chance.between(280, 900)
  const radius = chance.between(150, 210)
  const hand = (degrees: number, length: number, wide: number) =>
    `<rect x="${x - wide / 2}" y="${260 - length}" width="${wide}" height="${length}" fill="#111" transform="rotate(${degrees} ${x} 260)"/>`
  const cloth = `<path d="M${chance.between(80, 300).toFixed(0)} ${chance.between(480, 560).toFixed(0)} q 160 -120 380 -30 t 400 20 l 60 330 q -260 90 -460 20 t -400 -10 z" fill="#f7f7f3" stroke="#c9c9c2" stroke-width="6"/>`
  return `${turned(cloth, chance.between(-25, 25), 600, 650)}<circle cx="${x}" cy="260" r="${radius + 26}" fill="#23272a"/><circle cx="${x}" cy="260" r="${radius}" fill="#fdfdf8"/>${Array.from({ length: 12 }, (_, step) => `<rect x="${x - 4}" y="${260 - radius + 8}" width="8" height="26" fill="#111" transform="rotate(${step * 30} ${x} 260)"/>`).join('')}${hand((hours % 12) * 30 + minutes / 2, radius * 0.5, 16)}${hand(minutes * 6, radius * 0.8, 10)}${drawText(scene.note, 430, 700, { size: 50, fill: '#333' })}`
}
