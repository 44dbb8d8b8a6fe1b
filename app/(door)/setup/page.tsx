import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { isSetUp } from '@/lib/server/auth/is-set-up'
import { setUpAction } from '../door-actions'
import { DoorForm } from '../door-form'

export const metadata: Metadata = { title: 'First start' }

export default async function SetUpPage() {
  if (await isSetUp()) redirect('/sign-in')
  return (
    <>
      <h1>First start</h1>
      <p>
        This record is empty. Name the organisation that holds it and make its first administrator, who then invites
        everyone else and gives them their roles.
      </p>
      <DoorForm
        action={setUpAction}
        submit="Make the organisation"
        fields={[
          { name: 'code', label: 'One-time code', hint: 'Printed in the terminal when the server started.' },
          { name: 'organisation', label: 'Organisation that holds the record', autoComplete: 'organization' },
          { name: 'utcOffset', label: 'UTC offset at its office', hint: 'For example +01:00' },
          { name: 'name', label: 'Your name', hint: 'As it is to stand beside signatures.', autoComplete: 'name' },
          {
            name: 'personId',
            label: 'Your person id',
            hint: 'Short and permanent, for example your initials. It is never used again for anyone else.',
          },
          {
            name: 'email',
            label: 'E-mail address',
            type: 'email',
            hint: 'To sign in with. Nothing is sent to it.',
            autoComplete: 'username',
          },
          {
            name: 'password',
            label: 'Password',
            type: 'password',
            hint: 'At least 12 characters.',
            autoComplete: 'new-password',
          },
          { name: 'again', label: 'Password again', type: 'password', autoComplete: 'new-password' },
        ]}
      />
    </>
  )
}
