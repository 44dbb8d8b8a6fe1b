'use client'
import { useEffect, useId, useState } from 'react'
import { useCapture } from '@/app/_capture/capture-context'
import { PhotoTake } from '@/app/_capture/photo-take'
import { OutboxRefusal } from '@/app/_parts/outbox-refusal'
import { LabelledInput } from '@/app/_ui/labelled-input'
import type { PaperCopy } from '@/lib/domain/tally/paper-copy'
import { attachScan, type ScanAttached } from './attach-scan'

type Target = { repair: string; point: string; attempt: number }

/** Beside a record copied from paper: who observed it and when, who enters it, who keeps the paper and where, and the scan. Nothing is filled in beforehand. */
export function TranscriptionFields({
  copy,
  change,
  target,
  me,
  hasOwnTime,
  lacks,
}: {
  copy: PaperCopy
  change: (part: Partial<PaperCopy>) => void
  target: Target
  me: string
  /** The record has a time of its own among its fields. */
  hasOwnTime: boolean
  lacks: readonly string[]
}) {
  const id = useId()
  const { observers, persons, utcOffset } = useCapture()
  return (
    <fieldset className="sheet stack tight">
      <legend className="label">From a paper tally</legend>
      <p className="note">
        <strong>Key what stands on the paper, and nothing else.</strong>
        <span>The paper remains the original. A second person compares this copy with its scan before a release.</span>
      </p>
      <div className="field">
        <label htmlFor={`${id}-who`}>Observed by, as on the paper</label>
        <select id={`${id}-who`} value={copy.observer} onChange={(event) => change({ observer: event.target.value })}>
          <option value="">Choose the person</option>
          {observers.map((one) => (
            <option key={one.id} value={one.id}>
              {one.label}
            </option>
          ))}
        </select>
        <span className="hint">
          Entered by {persons.find((one) => one.id === me)?.label ?? me}, who is signed in. Both names are kept apart.
        </span>
      </div>
      {hasOwnTime ? (
        <p className="quiet">When it was observed: key the times below as they stand on the paper, at {utcOffset}.</p>
      ) : (
        <fieldset className="field">
          <legend className="label">Observed at, as on the paper</legend>
          <div className="row">
            <label className="field">
              Day
              <input
                type="date"
                aria-label="Day on the paper"
                value={copy.day}
                onChange={(event) => change({ day: event.target.value })}
              />
            </label>
            <label className="field">
              Time
              <input
                type="time"
                step={1}
                aria-label="Time on the paper"
                value={copy.clock}
                onChange={(event) => change({ clock: event.target.value })}
              />
            </label>
            <span className="quiet">{utcOffset}</span>
          </div>
        </fieldset>
      )}
      <LabelledInput
        label="Number of the sheet"
        hint="As printed; may stay empty for other paper"
        value={copy.sheet}
        change={(sheet) => change({ sheet })}
      />
      <LabelledInput label="Keeper of the paper" value={copy.keeper} change={(keeper) => change({ keeper })} />
      <LabelledInput
        label="Place of the paper"
        hint="Where another person finds it"
        value={copy.place}
        change={(place) => change({ place })}
      />
      <ScanField copy={copy} change={change} target={target} />
      {lacks.length > 0 ? (
        <div className="note refused" role="alert">
          <strong>Not saved yet.</strong>
          {lacks.map((one) => (
            <span key={one}>{one}</span>
          ))}
        </div>
      ) : null}
    </fieldset>
  )
}

function ScanField({
  copy,
  change,
  target,
}: {
  copy: PaperCopy
  change: (part: Partial<PaperCopy>) => void
  target: Target
}) {
  const { utcOffset, clockKind } = useCapture()
  const [attached, setAttached] = useState<ScanAttached | 'sending' | null>(null)
  const [shown, setShown] = useState<string | null>(null)
  useEffect(() => () => (shown ? URL.revokeObjectURL(shown) : undefined), [shown])
  const take = async (scan: Blob) => {
    setAttached('sending')
    setShown(URL.createObjectURL(scan))
    const answer = await attachScan(scan, { ...target, sheet: copy.sheet }, { utcOffset, clockKind })
    setAttached(answer)
    if (answer.kind === 'kept')
      change({ scan: { sha256: answer.sha256, name: scan instanceof File ? scan.name : 'from the camera' } })
  }
  return (
    <div className="field">
      <span className="label">Scan of the paper, the whole sheet readable</span>
      <PhotoTake
        label="The whole sheet, every figure readable"
        name="Scan of the paper"
        reviewsFiles={false}
        take={(scan) => void take(scan)}
      />
      {shown ? (
        // The picture lies on this device: the framework's image service has nothing to add.
        // biome-ignore lint/performance/noImgElement: see above
        <img className="scan-shown" src={shown} alt="Scan as chosen" />
      ) : null}
      <div role="status">
        {attached === 'sending' ? <p className="quiet">The scan is being taken in.</p> : null}
        {copy.scan && attached !== 'sending' ? (
          <p className="note good">
            <strong>Scan attached: {copy.scan.name}.</strong>
            <span>
              {attached?.kind === 'kept' && attached.isHere
                ? 'It is on this device and is sent before the copy.'
                : 'Choose another file to attach another page in its place.'}
            </span>
          </p>
        ) : null}
        {attached !== null && attached !== 'sending' && attached.kind === 'refused' ? (
          <OutboxRefusal refusal={attached.refusal} />
        ) : null}
      </div>
    </div>
  )
}
