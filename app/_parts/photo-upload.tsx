'use client'
import { useRouter } from 'next/navigation'
import { useId, useState } from 'react'
import { v7 } from 'uuid'
import { readNow } from '@/app/_capture/read-now'
import { Glyph } from '@/app/_ui/glyph'
import { RefusalNote, type ShownRefusal } from '@/app/_ui/refusal-note'

export type PhotoDemand = { id: string; show: string; atLeast: number; present: number }
type Sending = {
  key: string
  name: string
  state: 'sending' | 'kept' | 'refused'
  refusal?: ShownRefusal
  retry?: () => void
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
  const send = async (file: File, caption: string, demand: string | null, key: string = v7()) => {
    const put = (next: Omit<Sending, 'key' | 'name'>) =>
      setSendings((all) => [...all.filter((one) => one.key !== key), { key, name: file.name || caption, ...next }])
    put({ state: 'sending' })
    const now = await readNow(utcOffset, clockKind)
    const about = {
      stream: `repair:${repair}`,
      id: key,
      observedAt: now,
      enteredAt: now,
      body: { point, attempt, caption, ...(demand ? { demand } : {}) },
    }
    try {
      const reply = await fetch('/api/photos', {
        method: 'POST',
        body: file,
        headers: {
          'content-type': 'application/octet-stream',
          'x-underwrap-photo': encodeURIComponent(JSON.stringify(about)),
        },
      })
      const answer: unknown = await reply.json()
      if (reply.ok) {
        put({ state: 'kept' })
        router.refresh()
      } else put({ state: 'refused', refusal: refusalIn(answer), retry: () => void send(file, caption, demand, key) })
    } catch (cause) {
      if (!(cause instanceof TypeError || cause instanceof SyntaxError)) throw cause
      put({ state: 'refused', refusal: { code: 'no-answer' }, retry: () => void send(file, caption, demand, key) })
    }
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
            {one.name}:{' '}
            {one.state === 'sending' ? 'being taken in' : one.state === 'kept' ? 'in the record' : 'not taken in'}
          </span>
          {one.refusal ? <RefusalNote refusal={one.refusal} /> : null}
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
  pick: (file: File) => void
}) {
  const id = useId()
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
      <label className="button plain" htmlFor={id}>
        Take or choose
      </label>
      <input
        id={id}
        className="visually-hidden"
        type="file"
        accept="image/*,.heic,.heif"
        aria-label={`Photo: ${label}`}
        onChange={(event) => {
          const file = event.target.files?.[0]
          if (file) pick(file)
          event.target.value = ''
        }}
      />
    </div>
  )
}

function FreePhoto({ pick }: { pick: (file: File, caption: string) => void }) {
  const id = useId()
  const [caption, setCaption] = useState('')
  const isReady = caption.trim().length >= 3
  return (
    <div className="stack tight">
      <label className="field">
        <span className="label">Another photo: what it shows, with board and scale in view</span>
        <input value={caption} onChange={(event) => setCaption(event.target.value)} />
      </label>
      <label className="button plain" htmlFor={id} aria-disabled={!isReady}>
        Take or choose
      </label>
      <input
        id={id}
        className="visually-hidden"
        type="file"
        accept="image/*,.heic,.heif"
        aria-label="Another photo"
        disabled={!isReady}
        onChange={(event) => {
          const file = event.target.files?.[0]
          if (file) {
            pick(file, caption.trim())
            setCaption('')
          }
          event.target.value = ''
        }}
      />
    </div>
  )
}

function refusalIn(answer: unknown): ShownRefusal {
  if (
    answer !== null &&
    typeof answer === 'object' &&
    'error' in answer &&
    answer.error !== null &&
    typeof answer.error === 'object' &&
    'code' in answer.error
  )
    return answer.error as ShownRefusal
  return { code: 'no-answer' }
}
