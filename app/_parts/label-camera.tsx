'use client'
import { useEffect, useRef, useState } from 'react'
import { loadCodeReader, pixelsOf } from './label-codes'
import { closeCamera, type HeldCamera, openCamera } from './open-camera'

/** Time between two looks at the camera's picture. */
const LOOK_MS = 220
type State = 'starting' | 'looking' | 'no camera' | 'not allowed' | 'not secure' | 'no reader'
const WORDS: Record<State, string> = {
  starting: 'The camera is starting.',
  looking: 'Hold the code in the frame, straight on.',
  'no camera': 'No camera was found on this device. Take a picture file, or key the text.',
  'not allowed':
    'The camera is not allowed here. Allow it for this site in the browser, take a picture file, or key the text.',
  'not secure': 'A browser gives the camera only to a site on HTTPS. Take a picture file, or key the text.',
  'no reader': 'The reader of codes could not be loaded: there is no connection. Key the text.',
}

/** The camera's picture, searched for a code until one is read. Nothing of the picture is kept or sent. */
export function LabelCamera({ take }: { take: (text: string) => void }) {
  const video = useRef<HTMLVideoElement>(null)
  const taken = useRef(take)
  const [state, setState] = useState<State>('starting')
  useEffect(() => {
    taken.current = take
  }, [take])
  useEffect(() => {
    const look: HeldCamera = { isGone: false, stream: null }
    void watchCamera(look, video, setState, (text) => taken.current(text))
    return () => closeCamera(look)
  }, [])
  const isShown = state === 'starting' || state === 'looking'
  return (
    <div className="stack tight">
      <video
        ref={video}
        className="scan-video"
        playsInline
        muted
        hidden={!isShown}
        aria-label="Picture of the camera"
      />
      <p className={isShown ? 'quiet' : 'note'} role="status">
        {WORDS[state]}
      </p>
    </div>
  )
}

async function watchCamera(
  look: HeldCamera,
  video: { current: HTMLVideoElement | null },
  say: (state: State) => void,
  take: (text: string) => void,
): Promise<void> {
  const fault = await openCamera(look, { width: 1280, height: 720 })
  if (fault) return say(fault)
  const [reader, screen] = [await loadCodeReader().catch(() => null), video.current]
  if (look.isGone || screen === null) return closeCamera(look)
  if (reader === null) return say('no reader')
  screen.srcObject = look.stream
  await screen.play().catch(() => undefined)
  say('looking')
  const canvas = document.createElement('canvas')
  while (!look.isGone) {
    const pixels = pixelsOf(screen, canvas)
    const [text] = pixels === null ? [] : await reader(pixels)
    if (look.isGone) return
    if (text !== undefined) return take(text)
    await new Promise((settle) => setTimeout(settle, LOOK_MS))
  }
}
