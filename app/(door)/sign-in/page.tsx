import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { currentActor } from '@/lib/server/auth/current-actor'
import { isSetUp } from '@/lib/server/auth/is-set-up'
import { signInAction } from '../door-actions'
import { DoorForm } from '../door-form'

export const metadata: Metadata = { title: 'Sign in' }

export default async function SignInPage() {
  if (!(await isSetUp())) redirect('/setup')
  if (await currentActor()) redirect('/waiting')
  return (
    <>
      <h1>Sign in</h1>
      <DoorForm
        action={signInAction}
        submit="Sign in"
        fields={[
          { name: 'email', label: 'E-mail address', type: 'email', autoComplete: 'username' },
          { name: 'password', label: 'Password', type: 'password', autoComplete: 'current-password' },
        ]}
      />
      <p>
        Accounts come by invitation from your administrator. On a shared tablet, everyone who signs still gives their
        own name and password.
      </p>
    </>
  )
}
