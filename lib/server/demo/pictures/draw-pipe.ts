import { box, type Chance, drawText, turned } from './pen'
import { DETAILS } from './pipe-details'
import { type Frame, type Pipe, spots } from './pipe-frame'
import { drawScaleBar } from './surroundings'

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
