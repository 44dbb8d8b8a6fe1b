'use server'
import { redirect } from 'next/navigation'
import { acceptInvitation } from '@/lib/server/auth/accept-invitation'
import { setUp } from '@/lib/server/auth/set-up'
import { signIn } from '@/lib/server/auth/sign-in'
import type { DoorState } from './door-state'

/** Sign in with what was typed and go to what waits for the person. */
export async function signInAction(_state: DoorState, form: FormData): Promise<DoorState> {
  const values = textsOf(form, ['email'])
  const outcome = await signIn({ ...values, password: textOf(form, 'password') })
  if (!outcome.ok) return { error: outcome.error, values }
  redirect('/waiting')
}

/** Make the organisation and its first administrator, signed in. */
export async function setUpAction(_state: DoorState, form: FormData): Promise<DoorState> {
  const values = textsOf(form, ['code', 'organisation', 'utcOffset', 'name', 'personId', 'email'])
  const password = textOf(form, 'password')
  if (password !== textOf(form, 'again')) return { error: { code: 'passwords-differ' }, values }
  const outcome = await setUp({ ...values, password })
  if (!outcome.ok) return { error: outcome.error, values }
  const signed = await signIn({ email: values.email, password })
  redirect(signed.ok ? '/waiting' : '/sign-in')
}

/** Take up an invitation with a password of one's own, signed in. */
export async function acceptInvitationAction(_state: DoorState, form: FormData): Promise<DoorState> {
  const password = textOf(form, 'password')
  if (password !== textOf(form, 'again')) return { error: { code: 'passwords-differ' }, values: {} }
  const outcome = await acceptInvitation({ token: textOf(form, 'token'), password })
  if (!outcome.ok) return { error: outcome.error, values: {} }
  const signed = await signIn({ email: outcome.value.email, password })
  redirect(signed.ok ? '/waiting' : '/sign-in')
}

function textOf(form: FormData, name: string): string {
  const value = form.get(name)
  return typeof value === 'string' ? value : ''
}

function textsOf<N extends string>(form: FormData, names: readonly N[]): Record<N, string> {
  return Object.fromEntries(names.map((name) => [name, textOf(form, name)])) as Record<N, string>
}
