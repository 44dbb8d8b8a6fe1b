import type { InvitationRefusal } from '@/lib/server/auth/accept-invitation'
import type { SetUpRefusal } from '@/lib/server/auth/set-up'
import type { SignInRefusal } from '@/lib/server/auth/sign-in'

export type DoorRefusal =
  | SignInRefusal
  | SetUpRefusal
  | InvitationRefusal
  | { code: 'passwords-differ' }
  | { code: 'cookie-lost' }
/** What a form at the door shows after it was sent: the refusal, and what was typed, passwords aside. */
export type DoorState = { error: DoorRefusal | null; values: Record<string, string> }

/** A refusal at the door in one sentence. */
export function sentenceOf(refusal: DoorRefusal): string {
  switch (refusal.code) {
    case 'invalid':
      return 'Something is missing or not as it should be. It is said at each field below.'
    case 'email-or-password-wrong':
      return 'No account has this e-mail address and this password. Look at both and try again.'
    case 'too-many-tries':
      return `Too many tries. Wait ${waitText(refusal.retryAfterSeconds)} and try again.`
    case 'set-up-already':
      return 'This record has its organisation already. Sign in instead.'
    case 'code-wrong':
      return 'This is not the code that the terminal printed when the server started. A new start prints a new code.'
    case 'email-taken':
      return 'Another account has this e-mail address.'
    case 'person-has-account':
      return 'This person has an account already. Sign in instead.'
    case 'invitation-over':
      return 'This invitation was taken up already or its time ran out. Ask your administrator for a new link.'
    case 'passwords-differ':
      return 'The two passwords are not the same. Type the password once more.'
    case 'cookie-lost':
      return 'You are signed in, but this browser did not keep the cookie. Allow cookies for this address.'
  }
}

function waitText(seconds: number): string {
  const minutes = Math.ceil(seconds / 60)
  return minutes <= 1 ? 'a minute' : `${minutes} minutes`
}
