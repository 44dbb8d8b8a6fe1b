'use client'
import { useEffect, useId, useState } from 'react'
import type { PhotoHint } from '@/lib/capture/photo-hint'
import { CameraShot } from './camera-shot'
import { lookAtPhoto } from './look-at-photo'

const HINTS: Record<Exclude<PhotoHint['looks'], 'well'>, string> = {
  blurred: 'It looks blurred. Hold still, come closer or give light, and take it again before you leave the spot.',
  dark: 'It is dark. Give light, and take it again before you leave the spot.',
  'too bright': 'It is too bright. Turn from the light, and take it again before you leave the spot.',
}

/** A photo by the camera within the form, or from a file. What the camera takes is looked at before it is kept; a file too, where `reviewsFiles`. */
export function PhotoTake({
  label,
  name,
  isReady = true,
  reviewsFiles,
  take,
}: {
  label: string
  /** What a screen reader calls the file's field. */
  name: string
  isReady?: boolean
  reviewsFiles: boolean
  take: (photo: Blob) => void
}) {
  const id = useId()
  const [isCamera, setCamera] = useState(false)
  const [shot, setShot] = useState<{ photo: Blob; isFile: boolean } | null>(null)
  const [hint, setHint] = useState<PhotoHint | null>(null)
  const retake = () => {
    setCamera(shot !== null && !shot.isFile)
    setShot(null)
  }
  if (shot)
    return (
      <PhotoReview
        photo={shot.photo}
        label={label}
        retake={retake}
        keep={() => {
          setShot(null)
          take(shot.photo)
        }}
      />
    )
  if (isCamera)
    return (
      <CameraShot
        close={() => setCamera(false)}
        take={(photo) => {
          setCamera(false)
          setShot({ photo, isFile: false })
        }}
      />
    )
  return (
    <div className="row">
      <button type="button" className="button plain" disabled={!isReady} onClick={() => setCamera(true)}>
        Camera
      </button>
      <label className="button plain" htmlFor={id} aria-disabled={!isReady}>
        Choose a file
      </label>
      <input
        id={id}
        className="visually-hidden"
        type="file"
        accept="image/*,.heic,.heif"
        aria-label={name}
        disabled={!isReady}
        onChange={(event) => {
          const file = event.target.files?.[0]
          event.target.value = ''
          if (!file) return
          if (reviewsFiles) setShot({ photo: file, isFile: true })
          else {
            take(file)
            void lookAtPhoto(file).then(setHint)
          }
        }}
      />
      {hint && hint.looks !== 'well' ? (
        <p className="note warn" role="status">
          {HINTS[hint.looks]}
        </p>
      ) : null}
    </div>
  )
}

function PhotoReview({
  photo,
  label,
  keep,
  retake,
}: {
  photo: Blob
  label: string
  keep: () => void
  retake: () => void
}) {
  const [url, setUrl] = useState<string | null>(null)
  const [hint, setHint] = useState<PhotoHint | 'looking' | null>('looking')
  useEffect(() => {
    let isGone = false
    const shown = URL.createObjectURL(photo)
    setUrl(shown)
    void lookAtPhoto(photo).then((seen) => {
      if (!isGone) setHint(seen)
    })
    return () => {
      isGone = true
      URL.revokeObjectURL(shown)
    }
  }, [photo])
  return (
    <div className="stack tight photo-review">
      {/* The picture lies on this device: the framework's image service has nothing to add. */}
      {/* biome-ignore lint/performance/noImgElement: see above */}
      {url && hint ? <img src={url} alt={`As taken: ${label}`} /> : null}
      <div role="status">
        {hint === 'looking' ? <p className="quiet">Looking at it.</p> : null}
        {hint === null ? <p className="quiet">This browser cannot show the picture; the server can.</p> : null}
        {hint !== null && hint !== 'looking' ? (
          <p className={hint.looks === 'well' ? 'quiet' : 'note warn'}>
            {hint.looks === 'well' ? 'Board and scale readable? Then keep it.' : HINTS[hint.looks]}
          </p>
        ) : null}
      </div>
      <div className="row">
        <button type="button" className="button" onClick={keep}>
          Keep it
        </button>
        <button type="button" className="button plain" onClick={retake}>
          Take it again
        </button>
      </div>
    </div>
  )
}
