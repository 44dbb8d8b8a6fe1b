'use client'
import { type PointerEvent, useId, useRef, useState } from 'react'
import {
  DRAWING_HEIGHT,
  DRAWING_WIDTH,
  DrawnSignature,
  PLACES_AT_MOST,
  STROKES_AT_MOST,
} from '@/lib/domain/signing/drawn-signature'

type Place = [number, number]
/** Places nearer than this to the last one add nothing that an eye sees. */
const STEP = 3

/** A field to draw a signature in with finger, pen or mouse. `change` gets the drawing, or null while too little is drawn for one. */
export function DrawnPad({ name, change }: { name: string; change: (drawing: DrawnSignature | null) => void }) {
  const id = useId()
  const pad = useRef<SVGSVGElement>(null)
  const isDrawing = useRef(false)
  // several places of the pen arrive between two drawings of the screen: each must stand on the last
  const drawn = useRef<Place[][]>([])
  const [strokes, setStrokes] = useState<Place[][]>([])
  const take = (next: Place[][]) => {
    drawn.current = next
    setStrokes(next)
    const parsed = DrawnSignature.safeParse({ v: 1, strokes: next })
    change(parsed.success ? parsed.data : null)
  }
  const begin = (event: PointerEvent) => {
    const place = placeAt(pad.current, event)
    if (!place || drawn.current.length >= STROKES_AT_MOST) return
    event.preventDefault()
    pad.current?.setPointerCapture(event.pointerId)
    isDrawing.current = true
    take([...drawn.current, [place]])
  }
  const go = (event: PointerEvent) => {
    const place = isDrawing.current ? placeAt(pad.current, event) : null
    const last = drawn.current.at(-1)
    const before = last?.at(-1)
    if (!place || !last || !before || last.length >= PLACES_AT_MOST) return
    if (Math.hypot(place[0] - before[0], place[1] - before[1]) < STEP) return
    take([...drawn.current.slice(0, -1), [...last, place]])
  }
  const end = () => {
    isDrawing.current = false
  }
  return (
    <fieldset className="field drawn-pad">
      <legend className="label">Signature of {name}, drawn</legend>
      <span className="hint" id={`${id}-how`}>
        {name} draws it with finger, pen or mouse. A keyboard cannot draw, and typed letters are no signature: who does
        not draw signs with an account and password of their own.
      </span>
      <svg
        ref={pad}
        role="img"
        aria-label={`Field to draw in, ${strokes.length} ${strokes.length === 1 ? 'stroke' : 'strokes'}`}
        aria-describedby={`${id}-how`}
        viewBox={`0 0 ${DRAWING_WIDTH} ${DRAWING_HEIGHT}`}
        onPointerDown={begin}
        onPointerMove={go}
        onPointerUp={end}
        onPointerCancel={end}
      >
        <path className="drawn-line" d={`M30 ${DRAWING_HEIGHT - 40}H${DRAWING_WIDTH - 30}`} />
        {strokes.map((stroke, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: strokes are told apart by their order alone
          <path key={at} className="drawn-stroke" d={pathOf(stroke)} />
        ))}
      </svg>
      <div className="row">
        <button
          type="button"
          className="button plain"
          disabled={strokes.length === 0}
          onClick={() => take(strokes.slice(0, -1))}
        >
          Undo the last stroke
        </button>
        <button type="button" className="button plain" disabled={strokes.length === 0} onClick={() => take([])}>
          Clear
        </button>
      </div>
    </fieldset>
  )
}

function placeAt(pad: SVGSVGElement | null, event: PointerEvent): Place | null {
  const box = pad?.getBoundingClientRect()
  if (!box || box.width === 0 || box.height === 0) return null
  const within = (part: number, size: number) => Math.min(size, Math.max(0, Math.round(part * size)))
  return [
    within((event.clientX - box.left) / box.width, DRAWING_WIDTH),
    within((event.clientY - box.top) / box.height, DRAWING_HEIGHT),
  ]
}

/** A stroke as a path; a tap is a dot. */
function pathOf(stroke: readonly Place[]): string {
  const [first, ...rest] = stroke
  if (!first) return ''
  return `M${first.join(' ')}${rest.length === 0 ? 'h0.1' : rest.map((place) => `L${place.join(' ')}`).join('')}`
}
