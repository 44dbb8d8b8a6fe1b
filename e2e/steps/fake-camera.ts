import { renameSync, writeFileSync } from 'node:fs'
import sharp from 'sharp'

const WIDTH = 640
const HEIGHT = 480
const FRAMES = 2

/** What stands before the lens. */
export type Scene = 'dark' | 'blurred' | 'well lit'

/** What Chromium needs to take a film for its camera and to allow it without asking. */
export function cameraArguments(film: string): string[] {
  return [
    '--use-fake-device-for-media-stream',
    '--use-fake-ui-for-media-stream',
    `--use-file-for-fake-video-capture=${film}`,
  ]
}

/** Put a scene before the lens: a drawn film in the place of the one before. The camera shows it when it is opened anew. */
export async function showCamera(film: string, scene: Scene): Promise<void> {
  const drawn = sharp(Buffer.from(drawing(scene)))
  const picture = scene === 'blurred' ? sharp(await drawn.png().toBuffer()).blur(14) : drawn
  const rgb = await picture.removeAlpha().toColourspace('srgb').raw().toBuffer()
  const frame = Buffer.concat([Buffer.from('FRAME\n'), planesOf(rgb)])
  const head = Buffer.from(`YUV4MPEG2 W${WIDTH} H${HEIGHT} F10:1 Ip A1:1 C420jpeg\n`)
  writeFileSync(`${film}.next`, Buffer.concat([head, ...Array.from({ length: FRAMES }, () => frame)]))
  renameSync(`${film}.next`, film)
}

/** A board with a scale on it, in the light of the scene. */
function drawing(scene: Scene): string {
  const light = scene === 'dark' ? 0.1 : 1
  const grey = (level: number) => `rgb(${[level, level, level].map((one) => Math.round(one * light)).join(',')})`
  const ticks = Array.from(
    { length: 30 },
    (_, place) => `<rect x="${30 + place * 19}" y="300" width="8" height="${place % 5 ? 30 : 60}" fill="${grey(20)}"/>`,
  )
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}"><rect width="${WIDTH}" height="${HEIGHT}" fill="${grey(150)}"/><rect x="20" y="120" width="600" height="260" fill="${grey(235)}"/><text x="40" y="220" font-size="64" fill="${grey(10)}">Point 05</text>${ticks.join('')}</svg>`
}

/** Luma whole, both chroma planes at half the size, in the full range. */
function planesOf(rgb: Buffer): Buffer {
  const luma = Buffer.alloc(WIDTH * HEIGHT)
  const chroma = Buffer.alloc((WIDTH * HEIGHT) / 2, 128)
  for (let at = 0; at < luma.length; at += 1)
    luma[at] = Math.round(0.299 * (rgb[at * 3] ?? 0) + 0.587 * (rgb[at * 3 + 1] ?? 0) + 0.114 * (rgb[at * 3 + 2] ?? 0))
  return Buffer.concat([luma, chroma])
}
