import * as z from 'zod'

/** Side lengths of the field in which a signature is drawn, in its own steps; and the most strokes, and places of one stroke, that are kept. */
export const DRAWING_WIDTH = 600
export const DRAWING_HEIGHT = 200
export const STROKES_AT_MOST = 80
export const PLACES_AT_MOST = 600

const Place = z.tuple([z.int().min(0).max(DRAWING_WIDTH), z.int().min(0).max(DRAWING_HEIGHT)])

/**
 * A signature drawn with finger or pen: strokes as places in a field of 600 by 200, from the upper left. Its bytes are its canonical JSON, kept beside the facts under their digest, for it is personal
 * and may have to be disposed of. Less than a line's length of drawing is none.
 */
export const DrawnSignature = z
  .strictObject({
    v: z.literal(1),
    strokes: z.array(z.array(Place).min(1).max(PLACES_AT_MOST)).min(1).max(STROKES_AT_MOST),
  })
  .refine((drawn) => drawnLength(drawn.strokes) >= DRAWING_HEIGHT / 2, 'too little is drawn for a signature')
export type DrawnSignature = z.infer<typeof DrawnSignature>

/** Length of all strokes, in steps of the field. */
export function drawnLength(strokes: readonly (readonly (readonly [number, number])[])[]): number {
  let length = 0
  for (const stroke of strokes)
    stroke.forEach((place, at) => {
      const before = stroke[at - 1]
      if (before) length += Math.hypot(place[0] - before[0], place[1] - before[1])
    })
  return length
}
