import { box, type Chance, drawText, turned } from './pen'
import { type Frame, type Pipe, spots } from './pipe-frame'

type Detail = (frame: Frame, chance: Chance, scene: Pipe) => string[]

/** The hole itself with its corroded rim. */
export const hole: Detail = ({ middle, axis }, chance) => [
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

/** What each kind of shot of a pipe shows over the bare barrel. */
export const DETAILS: Record<Pipe['shows'], Detail> = {
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
