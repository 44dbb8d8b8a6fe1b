'use client'
import { useId, useState } from 'react'
import type { Choice } from '@/app/_desk/desk-field'
import { useSending } from '@/app/_desk/use-sending'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { invitePersonAction } from '@/app/(work)/actions/person-actions'

type Invitation = { url: string; name: string; email: string; until: string }

/** Make an invitation: the link is shown once, to copy and pass on. Nothing is sent from here. */
export function InviteForm({ persons }: { persons: readonly Choice[] }) {
  const id = useId()
  const [person, setPerson] = useState('')
  const [email, setEmail] = useState('')
  const [invitation, setInvitation] = useState<Invitation | null>(null)
  const [isCopied, setCopied] = useState(false)
  const { state, refusal, send } = useSending()
  const invite = async () => {
    const isMade = await send(async () => {
      const answer = await invitePersonAction({ person, email: email.trim() })
      if (answer.ok)
        setInvitation({
          url: `${location.origin}${answer.value.path}`,
          name: answer.value.name,
          email: answer.value.email,
          until: answer.value.expiresAt.slice(0, 10),
        })
      return answer
    })
    if (!isMade) return
    setCopied(false)
    setPerson('')
    setEmail('')
  }
  return (
    <form
      className="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void invite()
      }}
    >
      <div className="field">
        <label htmlFor={`${id}-person`}>Person</label>
        <select id={`${id}-person`} value={person} onChange={(event) => setPerson(event.target.value)}>
          <option value="">Choose</option>
          {persons.map((one) => (
            <option key={one.id} value={one.id}>
              {one.label}
            </option>
          ))}
        </select>
      </div>
      <div className="field">
        <label htmlFor={`${id}-email`}>Address they sign in with</label>
        <span className="hint">It only names the account; nothing is sent to it.</span>
        <input
          id={`${id}-email`}
          type="email"
          autoComplete="off"
          value={email}
          onChange={(event) => setEmail(event.target.value)}
        />
      </div>
      {refusal ? <RefusalNote refusal={refusal} /> : null}
      <div>
        <button type="submit" className="button" disabled={person === '' || email.trim() === '' || state === 'sending'}>
          Make the invitation
        </button>
      </div>
      {invitation ? (
        <div className="note good" role="status">
          <strong>
            Invitation for {invitation.name}, until {invitation.until}.
          </strong>
          <span>Copy it now: it is shown only here. Whoever holds it sets the password of {invitation.email}.</span>
          <div className="link-copy">
            <input
              readOnly
              value={invitation.url}
              aria-label="Link of the invitation"
              onFocus={(event) => event.target.select()}
            />
            <button
              type="button"
              className="button plain"
              onClick={async () => {
                await navigator.clipboard.writeText(invitation.url)
                setCopied(true)
              }}
            >
              {isCopied ? 'Copied' : 'Copy'}
            </button>
          </div>
        </div>
      ) : null}
    </form>
  )
}
