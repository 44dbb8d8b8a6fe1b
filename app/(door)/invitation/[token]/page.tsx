import type { Metadata } from 'next'
import Link from 'next/link'
import { findInvitation } from '@/lib/server/auth/find-invitation'
import { acceptInvitationAction } from '../../door-actions'
import { DoorForm } from '../../door-form'

export const metadata: Metadata = { title: 'Invitation', referrer: 'no-referrer' }

export default async function InvitationPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params
  const invited = await findInvitation(token)
  if (!invited) {
    return (
      <>
        <h1>This invitation is over</h1>
        <div className="sheet">
          <p>It was taken up already, or its time ran out. Ask your administrator for a new link.</p>
          <Link className="button plain" href="/sign-in">
            To sign in
          </Link>
        </div>
      </>
    )
  }
  return (
    <>
      <h1>Welcome, {invited.name}</h1>
      <p>
        {invited.organisation} invites you to its record. You will sign in as {invited.email}; choose the password that
        you will also sign with.
      </p>
      <DoorForm
        action={acceptInvitationAction}
        hidden={{ token }}
        submit="Set the password and sign in"
        fields={[
          {
            name: 'password',
            label: 'Password',
            type: 'password',
            hint: 'At least 12 characters. Nobody else learns it, the administrator included.',
            autoComplete: 'new-password',
          },
          { name: 'again', label: 'Password again', type: 'password', autoComplete: 'new-password' },
        ]}
      />
    </>
  )
}
