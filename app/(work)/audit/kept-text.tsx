'use client'
import { useState } from 'react'

/** A text to keep: shown whole, copied, or saved as a file byte for byte. */
export function KeptText({ text, fileName, label }: { text: string; fileName: string; label: string }) {
  const [told, setTold] = useState('')
  const save = () => {
    const address = URL.createObjectURL(new Blob([text], { type: 'text/plain' }))
    const link = document.createElement('a')
    link.href = address
    link.download = fileName
    link.click()
    URL.revokeObjectURL(address)
    setTold(`Saved as ${fileName}.`)
  }
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text)
      setTold('Copied.')
    } catch {
      setTold('This browser does not let a page copy: mark the text and copy it yourself.')
    }
  }
  return (
    <div className="stack tight">
      <pre className="exact">{text}</pre>
      <div className="row no-print">
        <button className="button plain" type="button" onClick={save}>
          Save {label}
        </button>
        <button className="button plain" type="button" onClick={copy}>
          Copy
        </button>
        <span className="quiet small" role="status">
          {told}
        </span>
      </div>
    </div>
  )
}
