'use client'
import { useState } from 'react'
import type { PageOutbox } from '@/app/_capture/page-outbox'
import { Glyph } from '@/app/_ui/glyph'
import { FORMS } from '@/lib/capture/forms/form-table'
import type { OutboxEntry } from '@/lib/capture/outbox/outbox-entry'
import { siteHref } from '@/lib/capture/site/site-address'
import { RECORD_TYPES } from '@/lib/domain/records/record'
import { showMoment } from '@/lib/domain/time'
import { ageWords } from './outbox-line'
import { OutboxRefusal } from './outbox-refusal'

const STATES = {
  waiting: ['plain-state', 'open', 'Waits'],
  sending: ['plain-state', 'open', 'Being sent'],
  refused: ['fail', 'fail', 'Refused'],
  'set aside': ['lapsed', 'closed', 'Set aside'],
  sent: ['pass', 'pass', 'In the record'],
} as const

/** One entry: what it states, where it stands, what the server said, and what a person may do about a refusal. */
export function OutboxRow({ entry, page }: { entry: OutboxEntry; page: PageOutbox }) {
  const [tone, glyph, word] = STATES[entry.state]
  const said = aboutOf(entry)
  return (
    <li>
      <div className="row between">
        <strong>{said.title}</strong>
        <span className={`mark ${tone}`}>
          <Glyph name={glyph} />
          {word}
        </span>
      </div>
      <span className="quiet small">
        {entry.input.stream.replace(':', ' ')}
        {said.point ? `, point ${said.point}` : ''}, captured {ageWords(page.nowMs() - entry.capturedAt)} ago
        {entry.madeOffline ? ', without a network' : ''}
        {entry.photos.length > 0 ? `, ${entry.photos.length} photo` : ''}
        {entry.receipt ? `, received ${showMoment(entry.receipt.receivedAt)}` : ''}
      </span>
      {entry.settled ? <span className="quiet small">{entry.settled.reason}</span> : null}
      {entry.state === 'refused' && entry.refusal ? (
        <>
          <OutboxRefusal refusal={entry.refusal} />
          <RefusedActs entry={entry} page={page} />
        </>
      ) : null}
    </li>
  )
}

function RefusedActs({ entry, page }: { entry: OutboxEntry; page: PageOutbox }) {
  const [reason, setReason] = useState<string | null>(null)
  const [refusal, setRefusal] = useState<{ code: string } | null>(null)
  const { form, repair, point, attempt } = aboutOf(entry)
  const tryAgain = async () => {
    const dealt = await page.outbox.tryAgain(entry.id)
    setRefusal(dealt.ok ? null : dealt.error)
    if (dealt.ok) await page.send()
  }
  const setAside = async () => {
    const dealt = await page.outbox.setAside(entry.id, reason ?? '')
    setRefusal(dealt.ok ? null : dealt.error)
  }
  return (
    <div className="stack tight">
      <div className="row">
        <button type="button" className="button" onClick={() => void tryAgain()}>
          Try again
        </button>
        {form && repair && point ? (
          <a className="button plain" href={siteHref({ repair, point, attempt, form, again: entry.id })}>
            Change and send again
          </a>
        ) : null}
        <button
          type="button"
          className="button plain"
          aria-expanded={reason !== null}
          onClick={() => setReason(reason === null ? '' : null)}
        >
          Set aside
        </button>
      </div>
      {reason === null ? null : (
        <div className="stack tight">
          <label className="field">
            <span className="label">Why it is set aside</span>
            <textarea value={reason} onChange={(event) => setReason(event.target.value)} />
          </label>
          <button
            type="button"
            className="button stop"
            disabled={reason.trim().length < 3}
            onClick={() => void setAside()}
          >
            Set it aside: it will not be sent
          </button>
        </div>
      )}
      {refusal ? <OutboxRefusal refusal={refusal} /> : null}
    </div>
  )
}

/** A decision in words; anything else by its command. */
function decisionTitle(command: OutboxEntry['command'], body: Record<string, unknown>): string {
  switch (command) {
    case 'sign-on-device':
      return `Signature: ${String(body.meaning)} by ${String(body.name)}`
    case 'release-on-device':
      return `Release for ${String(body.party)}, signed`
    case 'accept-on-device':
      return `Repair ${String(body.kind)}, signed`
    case 'submit-point':
      return 'Submitted for release'
    case 'refuse-release':
      return `Release refused for ${String(body.party)}`
    case 'withdraw-release':
      return 'Release withdrawn'
    case 'open-attempt':
      return `Attempt ${String(body.attempt)} opened`
    case 'mark-not-applicable':
      return 'Marked not applicable'
    case 'choose-governs':
      return 'Record that governs chosen'
    case 'settle-conflict':
      return `Conflict ruled on: ${String(body.ruling)}`
    case 'correct-record':
      return 'Correction'
    default:
      return command.replaceAll('-', ' ')
  }
}

function aboutOf(entry: OutboxEntry) {
  const body = (entry.input.body ?? {}) as Record<string, unknown>
  const record = (body.record ?? {}) as Record<string, unknown>
  const form = entry.command === 'record-point' ? (RECORD_TYPES.find((type) => type === record.type) ?? null) : null
  const caption = entry.command === 'attach-photo' && typeof body.caption === 'string' ? `Photo: ${body.caption}` : null
  return {
    form,
    title: form ? FORMS[form].title : (caption ?? decisionTitle(entry.command, body)),
    repair: entry.input.stream.startsWith('repair:') ? entry.input.stream.slice('repair:'.length) : null,
    point: typeof body.point === 'string' ? body.point : null,
    attempt: typeof body.attempt === 'number' ? body.attempt : null,
  }
}
