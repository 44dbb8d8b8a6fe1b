import { APIError } from 'better-auth/api'
import { headers } from 'next/headers'
import * as z from 'zod'
import { done, type Result, refused } from '@/lib/domain/result'
import { loadRuntime } from '@/lib/server/runtime/runtime'

const SignIn = z.strictObject({
  email: z.string().trim().min(1, 'the address is missing').max(254),
  password: z.string().min(1, 'the password is missing').max(128),
})

export type SignInRefusal =
  | { code: 'invalid'; fields: Record<string, string[]> }
  | { code: 'email-or-password-wrong' }
  | { code: 'too-many-tries'; retryAfterSeconds: number }

/**
 * Sign in and set the session cookie of this answer. An unknown address and a wrong password are answered alike.
 * Refuses `invalid`, `email-or-password-wrong`, `too-many-tries`.
 */
export async function signIn(input: unknown): Promise<Result<null, SignInRefusal>> {
  const form = SignIn.safeParse(input)
  if (!form.success) return refused({ code: 'invalid', fields: z.flattenError(form.error).fieldErrors })
  const { auth } = await loadRuntime()
  try {
    await auth.api.signInEmail({ body: form.data, headers: await headers() })
    return done(null)
  } catch (error) {
    if (!(error instanceof APIError)) throw error
    if (error.statusCode !== 429) return refused({ code: 'email-or-password-wrong' })
    const seconds = Number(error.body?.retryAfterSeconds)
    return refused({ code: 'too-many-tries', retryAfterSeconds: Number.isFinite(seconds) ? seconds : 60 })
  }
}

/** Sign out: end the session and take its cookie back. */
export async function signOut(): Promise<void> {
  const { auth } = await loadRuntime()
  await auth.api.signOut({ headers: await headers() })
}
