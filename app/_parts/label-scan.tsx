'use client'
import { useCallback, useEffect, useId, useRef, useState } from 'react'
import { LabelCamera } from './label-camera'
import { loadCodeReader, pixelsOf, type ScannedLabel } from './label-codes'

type Props = { take: (label: ScannedLabel) => void; label?: string; about?: string }

/** A button that asks for a label: by the camera, from a picture file, or keyed. The reader of symbols is loaded when it is first needed. */
export function LabelScan({ take, label = 'Scan', about = 'Scan a label' }: Props) {
  const dialog = useRef<HTMLDialogElement>(null)
  const [isOpen, setOpen] = useState(false)
  const close = useCallback(() => setOpen(false), [])
  useEffect(() => {
    if (isOpen) dialog.current?.showModal()
    else dialog.current?.close()
  }, [isOpen])
  return (
    <>
      <button type="button" className="button plain scan-button" onClick={() => setOpen(true)}>
        <span className="scan-glyph" aria-hidden="true" />
        {label}
      </button>
      <dialog ref={dialog} className="scan-dialog" aria-label={about} onClose={close} onCancel={close}>
        {isOpen ? (
          <div className="stack">
            <div className="sheet-head">
              <h2>{about}</h2>
              <button type="button" className="button plain" onClick={close}>
                Close
              </button>
            </div>
            <LabelAsk
              withCamera
              take={(scanned) => {
                setOpen(false)
                take(scanned)
              }}
            />
          </div>
        ) : null}
      </dialog>
    </>
  )
}

/** Camera, picture file and key field in one; `take` gets the first label that was read or keyed. */
export function LabelAsk({ take, withCamera }: { take: (label: ScannedLabel) => void; withCamera: boolean }) {
  const id = useId()
  const [keyed, setKeyed] = useState('')
  const [choices, setChoices] = useState<string[]>([])
  const [said, setSaid] = useState<string | null>(null)
  const readFile = async (file: File) => {
    setChoices([])
    setSaid('Looking for a code in the picture.')
    const words = await textsInFile(file)
    if (typeof words === 'string') return setSaid(words)
    const [first, ...others] = words
    if (first === undefined)
      return setSaid(
        'No code was found in this picture. Take it closer, straight on and in even light, or key the text.',
      )
    if (others.length === 0) return take({ text: first, by: 'image file' })
    setSaid('There is more than one code in this picture. Choose the right one.')
    setChoices(words)
  }
  const takeKeyed = () => {
    const text = keyed.trim()
    if (text !== '') take({ text, by: 'keyed' })
  }
  return (
    <div className="stack tight">
      {withCamera ? <LabelCamera take={(text) => take({ text, by: 'camera' })} /> : null}
      <div className="field">
        <label htmlFor={`${id}-file`}>From a picture file</label>
        <input
          id={`${id}-file`}
          type="file"
          accept="image/*"
          onChange={(event) => {
            const file = event.target.files?.[0]
            event.target.value = ''
            if (file) void readFile(file)
          }}
        />
      </div>
      <div aria-live="polite">{said === null ? null : <p className="note">{said}</p>}</div>
      {choices.length > 0 ? (
        <ul className="plain-list">
          {choices.map((text) => (
            <li key={text}>
              <button type="button" className="button plain" onClick={() => take({ text, by: 'image file' })}>
                {shownText(text)}
              </button>
            </li>
          ))}
        </ul>
      ) : null}
      <div className="field">
        <label htmlFor={`${id}-keyed`}>Or key what the label says</label>
        <span className="hint">
          Such as (01)…(17)…(10)…, an article number, or the number of a batch, instrument or repair
        </span>
        <div className="row">
          <input
            id={`${id}-keyed`}
            value={keyed}
            autoComplete="off"
            spellCheck={false}
            onChange={(event) => setKeyed(event.target.value)}
            onKeyDown={(event) => {
              if (event.key !== 'Enter') return
              event.preventDefault()
              takeKeyed()
            }}
          />
          <button type="button" className="button" onClick={takeKeyed} disabled={keyed.trim() === ''}>
            Take it
          </button>
        </div>
      </div>
    </div>
  )
}

/** A label's text for people: without the scanner's mark, its separators made visible. */
export function shownText(text: string): string {
  return text.replace(/^\](?:C1|d2|Q3|e0)/, '').replaceAll('\u001d', ' · ')
}

/** Every code in a picture file, or a sentence why it could not be searched. */
async function textsInFile(file: File): Promise<string[] | string> {
  const picture = await createImageBitmap(file).catch(() => null)
  if (picture === null) return 'This file is no picture that can be opened here. Take a JPEG or PNG.'
  const pixels = pixelsOf(picture, document.createElement('canvas'))
  picture.close()
  const reader = await loadCodeReader().catch(() => null)
  if (reader === null) return 'The reader of codes could not be loaded: there is no connection. Key the text.'
  return pixels === null ? [] : reader(pixels)
}
