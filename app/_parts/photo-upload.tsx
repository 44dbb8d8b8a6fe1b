'use client'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { v7 } from 'uuid'
import { attachPhoto } from '@/app/_capture/attach-photo'
import { PhotoTake } from '@/app/_capture/photo-take'
import { readNow } from '@/app/_capture/read-now'
import { Glyph } from '@/app/_ui/glyph'
import { OutboxRefusal } from './outbox-refusal'

export type PhotoDemand = { id: string; show: string; atLeast: number; present: number }
type Sending = {
  key: string
  name: string
  state: 'sending' | 'kept' | 'here' | 'refused'
  refusal?: { code: string; [fact: string]: unknown }
  retry?: () => void
}

const SAID: Record<Sending['state'], string> = {
  sending: 'being taken in',
  kept: 'in the record',
  here: 'on this device, not yet sent',
  refused: 'not taken in',
}

/** Photos that the plan demands, each with its own button, and free ones. Each file goes as it is; a refused one says why. */
export function PhotoUpload({
  repair,
  point,
  attempt,
  demands,
  isRestricted,
  clockKind,
  utcOffset,
}: {
  repair: string
  point: string
  attempt: number
  demands: readonly PhotoDemand[]
  isRestricted: boolean
  clockKind: 'real' | 'demo' | 'test'
  utcOffset: string
}) {
  const router = useRouter()
  const [sendings, setSendings] = useState<Sending[]>([])
  const send = async (photo: Blob, caption: string, demand: string | null, key: string = v7()) => {
    const put = (next: Omit<Sending, 'key' | 'name'>) =>
      setSendings((all) => [
        ...all.filter((one) => one.key !== key),
        { key, name: photo instanceof File ? photo.name || caption : caption, ...next },
      ])
    put({ state: 'sending' })
    const now = await readNow(utcOffset, clockKind)
    const about = {
      stream: `repair:${repair}`,
      observedAt: now,
      enteredAt: now,
      body: { point, attempt, caption, ...(demand ? { demand } : {}) },
    }
    const attached = await attachPhoto(photo, about, key)
    if (attached.kind === 'refused')
      return put({
        state: 'refused',
        refusal: attached.refusal,
        retry: () => void send(photo, caption, demand, key),
      })
    put({ state: attached.kind === 'in the record' ? 'kept' : 'here' })
    if (attached.kind === 'in the record') router.refresh()
  }
  return (
    <div className="stack" style={{ marginBottom: 16 }}>
      {isRestricted ? (
        <p className="note warn">
          <strong>Spark-restricted area.</strong>
          <span>
            The permit decides which devices may be taken in. Photos can be added later from a permitted place or
            camera.
          </span>
        </p>
      ) : null}
      {demands.map((demand) => (
        <PhotoPick
          key={demand.id}
          label={demand.show}
          present={demand.present}
          atLeast={demand.atLeast}
          pick={(file) => void send(file, demand.show, demand.id)}
        />
      ))}
      <FreePhoto pick={(file, caption) => void send(file, caption, null)} />
      {sendings.map((one) => (
        <div key={one.key} role="status">
          <span className={`mark ${one.state === 'kept' ? 'pass' : one.state === 'refused' ? 'fail' : 'plain-state'}`}>
            <Glyph name={one.state === 'kept' ? 'pass' : one.state === 'refused' ? 'fail' : 'open'} />
            {one.name}: {SAID[one.state]}
          </span>
          {one.refusal ? <OutboxRefusal refusal={one.refusal} /> : null}
          {one.state === 'refused' && one.retry ? (
            <button type="button" className="button plain" onClick={one.retry}>
              Send again
            </button>
          ) : null}
        </div>
      ))}
    </div>
  )
}

function PhotoPick({
  label,
  present,
  atLeast,
  pick,
}: {
  label: string
  present: number
  atLeast: number
  pick: (photo: Blob) => void
}) {
  const isMet = present >= atLeast
  return (
    <div className="row between">
      <span>
        <span className={`mark ${isMet ? 'pass' : 'plain-state'}`}>
          <Glyph name={isMet ? 'pass' : 'open'} />
        </span>{' '}
        {label}{' '}
        <span className="quiet">
          {present} of {atLeast}
        </span>
      </span>
      <PhotoTake label={label} name={`Photo: ${label}`} reviewsFiles={false} take={pick} />
    </div>
  )
}

function FreePhoto({ pick }: { pick: (photo: Blob, caption: string) => void }) {
  const [caption, setCaption] = useState('')
  const isReady = caption.trim().length >= 3
  return (
    <div className="stack tight">
      <label className="field">
        <span className="label">Another photo: what it shows, with board and scale in view</span>
        <input value={caption} onChange={(event) => setCaption(event.target.value)} />
      </label>
      <PhotoTake
        label={caption}
        name="Another photo"
        isReady={isReady}
        reviewsFiles={false}
        take={(photo) => {
          pick(photo, caption.trim())
          setCaption('')
        }}
      />
    </div>
  )
}
