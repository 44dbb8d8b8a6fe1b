'use client'
import { useState } from 'react'
import type { PageOutbox } from '@/app/_capture/page-outbox'
import { carryInFile } from '@/lib/capture/outbox/carry-in-file'
import { createFetchExchange } from '@/lib/capture/outbox/fetch-exchange'
import { isOpen, type OutboxEntry } from '@/lib/capture/outbox/outbox-entry'
import { writeOutboxFile } from '@/lib/capture/outbox/write-outbox-file'
import { OutboxRefusal } from './outbox-refusal'

/** What waits, carried by hand: written into an encrypted file here, and carried in from one at a device with a network. */
export function OutboxCarry({ page }: { page: PageOutbox }) {
  const [passphrase, setPassphrase] = useState('')
  const [refusal, setRefusal] = useState<{ code: string; [fact: string]: unknown } | null>(null)
  const [said, setSaid] = useState<string | null>(null)
  const [notReceived, setNotReceived] = useState<OutboxEntry[]>([])
  const write = async () => {
    const written = await writeOutboxFile({ store: page.store, owner: page.owner, nowMs: page.nowMs() }, passphrase)
    setSaid(written.ok ? 'The file is written. Nothing was taken off this device.' : null)
    setRefusal(written.ok ? null : written.error)
    if (written.ok)
      save(
        written.value,
        `underwrap-${page.owner.person}-${new Date(page.nowMs()).toISOString().slice(0, 10)}.uwoutbox`,
      )
  }
  const carryIn = async (file: File) => {
    const carried = await carryInFile(file, passphrase, page.owner, createFetchExchange(undefined, '', page.nowMs))
    setRefusal(carried.ok ? null : carried.error)
    setNotReceived([])
    if (!carried.ok) return setSaid(null)
    const { entries, outcome } = carried.value
    setNotReceived(entries.filter((one) => one.state === 'refused'))
    const received = entries.filter((one) => one.state === 'sent').length
    const refused = entries.filter((one) => one.state === 'refused').length
    setSaid(
      `${received} received, ${refused} refused, ${entries.filter(isOpen).length - refused} not sent${outcome.kind === 'sent' ? '' : `: ${outcome.kind.replaceAll('-', ' ')}`}. What did not arrive stays in the file and on the device that wrote it.`,
    )
  }
  return (
    <details className="sheet">
      <summary className="fold-head">Carry it by hand, in an encrypted file</summary>
      <div className="stack">
        <label className="field">
          <span className="label">Passphrase</span>
          <span className="hint">At least 12 characters. Without it the file opens for nobody.</span>
          <input
            type="password"
            autoComplete="off"
            value={passphrase}
            onChange={(event) => setPassphrase(event.target.value)}
          />
        </label>
        <div className="row">
          <button type="button" className="button" onClick={() => void write()}>
            Write what waits into a file
          </button>
          <label className="button plain">
            Carry a file in
            <input
              className="visually-hidden"
              type="file"
              accept=".uwoutbox"
              onChange={(event) => {
                const file = event.target.files?.[0]
                event.target.value = ''
                if (file) void carryIn(file)
              }}
            />
          </label>
        </div>
        <div role="status">{said ? <p className="note">{said}</p> : null}</div>
        {refusal ? <OutboxRefusal refusal={refusal} /> : null}
        {notReceived.map((entry) => (entry.refusal ? <OutboxRefusal key={entry.id} refusal={entry.refusal} /> : null))}
      </div>
    </details>
  )
}

function save(file: Blob, name: string): void {
  const url = URL.createObjectURL(file)
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
}
