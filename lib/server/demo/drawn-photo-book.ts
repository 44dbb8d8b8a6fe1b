import { DEFAULT_PHOTO_LIMITS } from '@/lib/photo/photo-intake'
import type { PhotoStore } from '@/lib/photo/photo-store'
import { takeInPhoto } from '@/lib/photo/take-in'
import { photoBodyOf } from '@/lib/server/commands/photo-body'
import { demoFacts } from './demo-facts'
import { describedPhotos, type IntakeText, type PhotoBook, type PhotoDrawing } from './photo-drawing'
import { drawPhoto } from './pictures/draw-photo'

const AT_ONCE = 3

/** Every photo that the demo's script asks for, each key once: a photo that two repairs cite is drawn once. */
export function demoDrawings(): PhotoDrawing[] {
  const drawings = new Map<string, PhotoDrawing>()
  demoFacts((drawing) => {
    drawings.set(drawing.key, drawing)
    return describedPhotos(drawing)
  })
  return [...drawings.values()]
}

/**
 * Draw every photo of the demo and take it in as every photo is.
 * @throws Error when a drawing is refused at intake, or the photo store is lost
 */
export async function drawnPhotoBook(store: PhotoStore): Promise<PhotoBook> {
  const waiting = demoDrawings()
  const intakes = new Map<string, IntakeText>()
  const drawNext = async (): Promise<void> => {
    for (let drawing = waiting.pop(); drawing; drawing = waiting.pop())
      intakes.set(drawing.key, await drawAndTakeIn(drawing, store))
  }
  await Promise.all(Array.from({ length: AT_ONCE }, drawNext))
  return (drawing) => {
    const intake = intakes.get(drawing.key)
    if (!intake) throw new RangeError(`Expected a drawn photo, received ${drawing.key}`)
    return intake
  }
}

async function drawAndTakeIn(drawing: PhotoDrawing, store: PhotoStore): Promise<IntakeText> {
  const taken = await takeInPhoto({ bytes: await drawPhoto(drawing), store, limits: DEFAULT_PHOTO_LIMITS })
  if (!taken.ok) throw new Error(`The drawing ${drawing.key} was refused: ${taken.error.code}`)
  const body = photoBodyOf(taken.value)
  if (!body.ok) throw new Error(`The drawing ${drawing.key} was refused: ${body.error.code}`)
  return body.value
}
