import sharp from 'sharp'
import type { PhotoDrawing, Scene } from '../photo-drawing'
import { drawDial, drawDigital, drawLogger } from './draw-instrument'
import { drawPipe } from './draw-pipe'
import { drawPackage, drawPaper, drawScale, drawWipe } from './draw-thing'
import { type Chance, chanceOf, FRAME } from './pen'
import { drawBoard, drawLight, drawSurroundings, SHARED } from './surroundings'

/** Size of the JPEGs, px. */
export const PHOTO_SIZE = { width: 1000, height: 750 } as const

/** Where the demo's photos say they were taken: open water, so that no real site is named. */
const PLACE = {
  IFD3: {
    GPSVersionID: '2 3 0 0',
    GPSLatitudeRef: 'N',
    GPSLatitude: '53/1 54/1 0/1',
    GPSLongitudeRef: 'W',
    GPSLongitude: '5/1 12/1 0/1',
  },
} as const
const QUALITY = 82
/** Photos that came out too like another in their first drawing, and how often they were drawn anew. */
const DRAWN_ANEW: Record<string, number> = {}

/**
 * A photo drawn for the demo as a JPEG with EXIF time, offset, place and camera. The same drawing gives the same bytes with the same picture library.
 * It is drawn, not taken: the demo says so.
 */
export async function drawPhoto(drawing: PhotoDrawing): Promise<Uint8Array> {
  const { takenAt } = drawing
  const taken = `${takenAt.slice(0, 10).replaceAll('-', ':')} ${takenAt.slice(11, 19)}`
  const picture = sharp(Buffer.from(svgOf(drawing)))
    .jpeg({ quality: QUALITY, mozjpeg: false })
    .withExif({
      IFD0: { Make: 'Drawn', Model: 'Demo picture 1', Software: 'underwrap demo' },
      IFD2: { DateTimeOriginal: taken, OffsetTimeOriginal: takenAt.slice(19) },
      ...PLACE,
    })
  return picture.toBuffer()
}

/** The drawing as SVG of a size in px: surroundings, the scene, the board and the light. */
export function svgOf(
  drawing: PhotoDrawing,
  { width, height }: { width: number; height: number } = PHOTO_SIZE,
): string {
  const chance = chanceOf(`${drawing.key} ${DRAWN_ANEW[drawing.key] ?? 0}`)
  const content = [
    SHARED,
    drawSurroundings(chance),
    drawScene(drawing.scene, chance),
    drawing.scene.kind === 'pipe' || chance.next() > 0.5 ? drawBoard(drawing, chance) : '',
    drawLight(chance),
  ]
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${FRAME.width} ${FRAME.height}">${content.join('')}</svg>`
}

function drawScene(scene: Scene, chance: Chance): string {
  switch (scene.kind) {
    case 'pipe':
      return drawPipe(scene, chance)
    case 'dial':
      return drawDial(scene, chance)
    case 'digital':
      return drawDigital(scene, chance)
    case 'package':
      return drawPackage(scene, chance)
    case 'scale':
      return drawScale(scene, chance)
    case 'board':
      return drawPaper(scene, chance)
    case 'wipe':
      return drawWipe(scene, chance)
    case 'logger':
      return drawLogger(scene, chance)
  }
}
