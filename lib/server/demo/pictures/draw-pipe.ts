import type { Scene } from '../photo-drawing'
import { box, type Chance, drawText, turned } from './pen'
import { drawScaleBar } from './surroundings'

type Pipe = Extract<Scene, { kind: 'pipe' }>
type Frame = { top: number; height: number; left: number; right: number; middle: number; axis: number }

const STEEL: Record<Pipe['shows'], [string, string, string]> = {
  hole: ['#3d2417', '#9a5a33', '#4c2d1c'],
  wide: ['#33261d', '#8a6a4d', '#3b2c22'],
  prepared: ['#6f757a', '#d7dbde', '#787e83'],
  length: ['#6a7075', '#cfd4d8', '#73797e'],
  wet: ['#2b1e17', '#7a5138', '#30231b'],
  dry: ['#5d6266', '#bfc4c8', '#62676b'],
  marks: ['#686d71', '#c7ccd0', '#6d7276'],
  band: ['#6a6f73', '#d1d6da', '#70757a'],
  ply: ['#6d7a52', '#d9dcae', '#717e56'],
  joint: ['#7c8a5e', '#e2e4bd', '#808e62'],
  film: ['#5f7a83', '#e6f2f4', '#647f88'],
  side: ['#5b5f45', '#c3c69a', '#60644a'],
  label: ['#63674d', '#cdd0a6', '#686c52'],
  tested: ['#585c43', '#bcbf93', '#5d6148'],
  weep: ['#5d6266', '#b4babf', '#62676b'],
  primer: ['#5a2f2a', '#b5574b', '#60342f'],
}

/** A pipe across the frame, in its state of work, with what the point asks to be seen on it. */
export function drawPipe(scene: Pipe, chance: Chance): string {
  const axis = chance.between(300, 600)
  const height = scene.shows === 'wide' ? chance.between(150, 260) : chance.between(330, 640)
  const frame: Frame = {
    top: axis - height / 2,
    height,
    left: -300,
    right: 1500,
    middle: chance.between(430, 780),
    axis,
  }
  const tilt = chance.between(-24, 24) + (chance.next() > 0.72 ? 90 : 0)
  const [dark, bright, under] = STEEL[scene.shows]
  const shine = chance.between(0.22, 0.62)
  const body = [
    `<defs><linearGradient id="round" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="${dark}"/><stop offset="${shine.toFixed(2)}" stop-color="${bright}"/><stop offset="1" stop-color="${under}"/></linearGradient></defs>`,
    box(frame.left, frame.top + 24, frame.right - frame.left, height, '#0006'),
    box(frame.left, frame.top, frame.right - frame.left, height, 'url(#round)'),
    ...rustOutside(scene, frame, chance),
    ...DETAILS[scene.shows](frame, chance, scene),
  ]
  return `${turned(body.join(''), tilt, 600, 450)}${scene.shows === 'wide' ? '' : drawScaleBar(chance, height / 170)}${drawText(`${scene.clock} o'clock`, 960, 872, { size: 30, fill: '#fffbe6' })}`
}

/** Old coating and rust beyond the prepared band. */
function rustOutside({ shows }: Pipe, { top, height, middle }: Frame, chance: Chance): string[] {
  if (shows === 'hole' || shows === 'wide' || shows === 'wet')
    return spots(chance, 40, -200, 1400, top, height, ['#2a130a', '#b26a3a', '#5b2e18'])
  const half = chance.between(330, 430)
  return [
    box(-300, top, middle - half + 300, height, '#4a2a1acc'),
    box(middle + half, top, 1600, height, '#46301fcc'),
    ...spots(chance, 14, -200, middle - half, top, height, ['#2a130a', '#8a4b28', '#331a0e']),
  ]
}

function spots(
  chance: Chance,
  count: number,
  from: number,
  to: number,
  top: number,
  height: number,
  colours: [string, string, string],
): string[] {
  return Array.from(
    { length: count },
    () =>
      `<ellipse cx="${chance.between(from, to).toFixed(0)}" cy="${chance.between(top, top + height).toFixed(0)}" rx="${chance.between(5, 60).toFixed(0)}" ry="${chance.between(4, 30).toFixed(0)}" fill="${chance.pick(colours)}" opacity="${chance.between(0.3, 0.9).toFixed(2)}"/>`,
  )
}

type Detail = (frame: Frame, chance: Chance, scene: Pipe) => string[]

const hole: Detail = ({ middle, axis }, chance) => [
  `<ellipse cx="${middle}" cy="${axis}" rx="${chance.between(16, 30).toFixed(0)}" ry="${chance.between(12, 22).toFixed(0)}" fill="#050505"/>`,
  `<circle cx="${middle}" cy="${axis}" r="74" fill="none" stroke="#f5e663" stroke-width="7"/>`,
]
const chalkGrid: Detail = ({ top, height, middle }) => [
  ...['A', 'B', 'C', 'D', 'E'].flatMap((name, step) => [
    box(middle + (step - 2) * 130 - 3, top, 6, height, '#fff8'),
    drawText(name, middle + (step - 2) * 130 + 10, top + 44, { size: 40, fill: '#fffdf2' }),
  ]),
  ...[0.3, 0.5, 0.7].map((share) => box(middle - 330, top + height * share, 660, 4, '#fff7')),
]
const plateAndBand = ({ middle, axis, top, height }: Frame): string[] => [
  box(middle - 120, axis - 100, 240, 200, '#9aa2a8', 'stroke="#3c4247" stroke-width="5"'),
  box(middle - 70, top - 10, 140, height + 20, '#e3e7ea', 'stroke="#555c61" stroke-width="6"'),
  box(middle - 92, top + 20, 184, 76, '#565d63', 'rx="8"'),
  `<circle cx="${middle}" cy="${top + 58}" r="22" fill="#c9cfd3" stroke="#222" stroke-width="6"/>`,
]
const wrapEdge: Detail = ({ top, height, middle }) => [
  box(middle - 345, top - 16, 690, height + 32, '#b9bd8fdd', 'rx="14"'),
  ...Array.from({ length: 20 }, (_, step) => box(middle - 340 + step * 34, top - 16, 3, height + 32, '#5f653f66')),
  ...Array.from({ length: 9 }, (_, step) => box(middle - 345, top + (height / 9) * step, 690, 3, '#5f653f55')),
]

const DETAILS: Record<Pipe['shows'], Detail> = {
  hole: (frame, chance, scene) => [
    ...hole(frame, chance, scene),
    drawText(scene.note, frame.middle + 95, frame.axis - 60, { size: 34, fill: '#fdf7c8' }),
  ],
  wide: (frame, chance, scene) => [
    ...hole(frame, chance, scene),
    box(frame.middle - 330, frame.top - 40, 46, frame.height + 80, '#8e8578'),
    drawText(scene.note, frame.middle - 400, frame.top - 60, { size: 36, fill: '#fff' }),
  ],
  prepared: (frame, chance, scene) => [
    ...chalkGrid(frame, chance, scene),
    `<ellipse cx="${frame.middle}" cy="${frame.top + frame.height + 70}" rx="250" ry="60" fill="#aebcc4" stroke="#eef" stroke-width="8"/>`,
    drawText(scene.note, frame.middle - 60, frame.top + frame.height + 84, { size: 36, fill: '#222' }),
  ],
  length: (frame, chance, scene) => [
    ...hole(frame, chance, scene),
    box(frame.middle - 400, frame.axis + 90, 800, 60, '#f3c92b'),
    ...Array.from({ length: 41 }, (_, step) =>
      box(frame.middle - 400 + step * 20, frame.axis + 90, 3, step % 5 === 0 ? 34 : 18, '#111'),
    ),
    drawText(scene.note, frame.middle - 120, frame.axis + 210, { size: 36, fill: '#fff' }),
  ],
  wet: (frame, chance, scene) => [
    ...hole(frame, chance, scene),
    ...Array.from(
      { length: 34 },
      (_, step) =>
        `<path d="M${frame.middle} ${frame.axis} q ${chance.between(-260, 260).toFixed(0)} ${chance.between(-160, 60).toFixed(0)} ${chance.between(-420, 420).toFixed(0)} ${chance.between(120, 420).toFixed(0)}" stroke="#dff1fb" stroke-width="${(step % 5) + 2}" fill="none" opacity="0.7"/>`,
    ),
  ],
  dry: (frame, _, scene) =>
    scene.note === 'band'
      ? plateAndBand(frame)
      : [
          `<circle cx="${frame.middle}" cy="${frame.axis}" r="46" fill="#b98d55" stroke="#5b3d1c" stroke-width="6"/>`,
          box(frame.middle - 60, frame.axis - 4, 120, 8, '#7b5a2f'),
        ],
  marks: (frame, chance, scene) => [
    `<ellipse cx="${frame.middle}" cy="${frame.axis}" rx="300" ry="170" fill="#c9b37c"/>`,
    ...[-1, 0, 1].flatMap((row) =>
      [-1, 0, 1].map(
        (column) => `<circle cx="${frame.middle + column * 130}" cy="${frame.axis + row * 90}" r="11" fill="#17324d"/>`,
      ),
    ),
    box(frame.middle - 26, frame.top - 150, 52, frame.height / 2 + 150, '#d8dde2'),
    box(frame.middle - 80, frame.top - 220, 160, 110, '#1d2a33', 'rx="12"'),
    drawText(scene.note, frame.middle - 180, frame.axis + 240, { size: 34, fill: '#fff' }),
    ...spots(chance, 6, frame.middle - 260, frame.middle + 260, frame.axis - 150, 300, [
      '#bfa76c',
      '#d6c391',
      '#a99055',
    ]),
  ],
  band: (frame, chance, scene) => [
    ...chalkGrid(frame, chance, scene),
    box(frame.middle - 380, frame.top, 14, frame.height, '#d23c2c'),
    box(frame.middle + 366, frame.top, 14, frame.height, '#d23c2c'),
    `<ellipse cx="${frame.middle}" cy="${frame.axis}" rx="190" ry="110" fill="#c9b37c"/>`,
  ],
  ply: (frame, chance, scene) => [
    ...wrapEdge(frame, chance, scene),
    ...spots(chance, 30, frame.middle - 330, frame.middle + 330, frame.top, frame.height, [
      '#e7eac9',
      '#9fa36f',
      '#f4f6df',
    ]),
    drawText(scene.note, frame.middle - 70, frame.axis, { size: 44, fill: '#2b2f18' }),
  ],
  joint: (frame, chance, scene) => [
    ...wrapEdge(frame, chance, scene),
    box(frame.middle - 60, frame.top - 16, 20, frame.height + 32, '#4d5230'),
    box(frame.middle + 80, frame.top - 16, 14, frame.height + 32, '#4d5230aa'),
    drawText(scene.note, frame.middle - 40, frame.axis - 60, { size: 40, fill: '#22260f' }),
  ],
  film: (frame, chance, scene) => [
    ...wrapEdge(frame, chance, scene),
    ...Array.from(
      { length: 18 },
      () =>
        `<path d="M${frame.middle + chance.between(-340, 300)} ${frame.top} l ${chance.between(20, 120).toFixed(0)} ${frame.height}" stroke="#ffffff" stroke-width="${chance.between(3, 16).toFixed(0)}" opacity="0.45"/>`,
    ),
    drawText(scene.note, frame.middle - 100, frame.axis + 20, { size: 44, fill: '#16323a' }),
  ],
  side: (frame, chance, scene) => [
    ...wrapEdge(frame, chance, scene),
    ...spots(chance, 12, frame.middle - 330, frame.middle + 330, frame.top, frame.height, [
      '#8f9468',
      '#d9dcb8',
      '#737850',
    ]),
    box(frame.middle - 420, frame.axis + 110, 840, 44, '#f3c92b'),
    ...Array.from({ length: 43 }, (_, step) =>
      box(frame.middle - 420 + step * 20, frame.axis + 110, 3, step % 5 === 0 ? 26 : 14, '#111'),
    ),
    drawText(`${scene.clock}   ${scene.note}`, frame.middle - 160, frame.axis - 30, { size: 44, fill: '#1f2310' }),
  ],
  label: (frame, chance, scene) => [
    ...wrapEdge(frame, chance, scene),
    turned(
      `${box(frame.middle - 190, frame.axis - 100, 380, 200, '#eceff1', 'rx="12" stroke="#222" stroke-width="6"')}${drawText(scene.note, frame.middle - 150, frame.axis - 10, { size: 58 })}${drawText('NO WELDING', frame.middle - 150, frame.axis + 44, { size: 34, fill: '#a3231b' })}${drawText('NO CLAMPING', frame.middle - 150, frame.axis + 84, { size: 34, fill: '#a3231b' })}`,
      chance.between(-9, 9),
      frame.middle,
      frame.axis,
    ),
  ],
  tested: (frame, chance, scene) => [
    ...wrapEdge(frame, chance, scene),
    drawText('DRY', frame.middle - 90, frame.axis + 10, { size: 80, fill: '#20240f' }),
    drawText(scene.note, frame.middle - 90, frame.axis + 70, { size: 40, fill: '#20240f' }),
    box(frame.middle + 150, frame.top - 200, 40, 260, '#b38a2c'),
  ],
  weep: (frame, chance, scene) => [
    `<ellipse cx="${frame.middle}" cy="${frame.axis}" rx="280" ry="160" fill="#c2ad78"/>`,
    ...Array.from(
      { length: 7 },
      () =>
        `<path d="M${frame.middle} ${frame.axis} q ${chance.between(-60, 60).toFixed(0)} 140 ${chance.between(-140, 140).toFixed(0)} ${chance.between(220, 360).toFixed(0)}" stroke="#e8f6ff" stroke-width="${chance.between(5, 14).toFixed(0)}" fill="none" opacity="0.85"/>`,
    ),
    `<circle cx="${frame.middle}" cy="${frame.axis}" r="60" fill="none" stroke="#d23c2c" stroke-width="9"/>`,
    drawText(scene.note, frame.middle + 80, frame.axis - 60, { size: 50, fill: '#fff' }),
  ],
  primer: (frame) => [box(frame.middle - 220, frame.top, 440, frame.height, '#a5463bcc')],
}
