'use client'
import { useEffect, useRef, useState } from 'react'
import { closeCamera, type HeldCamera, openCamera } from '@/app/_parts/open-camera'

type State = 'starting' | 'ready' | 'no camera' | 'not allowed' | 'not secure'
const WORDS: Record<Exclude<State, 'ready'>, string> = {
  starting: 'The camera is starting.',
  'no camera': 'No camera was found on this device. Choose a picture file.',
  'not allowed': 'The camera is not allowed here. Allow it for this site in the browser, or choose a picture file.',
  'not secure': 'A browser gives the camera only to a site on HTTPS. Choose a picture file.',
}
const JPEG_QUALITY = 0.92

/** The camera within the form: its picture, and one button that takes it at the camera's full size. */
export function CameraShot({ take, close }: { take: (photo: Blob) => void; close: () => void }) {
  const video = useRef<HTMLVideoElement>(null)
  const [state, setState] = useState<State>('starting')
  useEffect(() => {
    const held: HeldCamera = { isGone: false, stream: null }
    void startCamera(held, video, setState)
    return () => closeCamera(held)
  }, [])
  const shoot = () => {
    const screen = video.current
    if (!screen || screen.videoWidth === 0) return
    const canvas = document.createElement('canvas')
    canvas.width = screen.videoWidth
    canvas.height = screen.videoHeight
    canvas.getContext('2d')?.drawImage(screen, 0, 0)
    canvas.toBlob((photo) => photo && take(photo), 'image/jpeg', JPEG_QUALITY)
  }
  return (
    <div className="stack tight">
      <video
        ref={video}
        className="scan-video"
        playsInline
        muted
        hidden={state !== 'ready'}
        aria-label="Picture of the camera"
      />
      {state === 'ready' ? null : (
        <p className="note" role="status">
          {WORDS[state]}
        </p>
      )}
      <p className="quiet small">Board and scale in view? Straight on, the whole of what is shown.</p>
      <div className="row">
        <button type="button" className="button" disabled={state !== 'ready'} onClick={shoot}>
          Take the photo
        </button>
        <button type="button" className="button plain" onClick={close}>
          Close the camera
        </button>
      </div>
    </div>
  )
}

async function startCamera(
  held: HeldCamera,
  video: { current: HTMLVideoElement | null },
  say: (state: State) => void,
): Promise<void> {
  const fault = await openCamera(held, { width: 4096, height: 3072 })
  if (fault) return say(fault)
  const screen = video.current
  if (held.isGone || !screen) return closeCamera(held)
  screen.srcObject = held.stream
  await screen.play().catch(() => undefined)
  if (!held.isGone) say('ready')
}
