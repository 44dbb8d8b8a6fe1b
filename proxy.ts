import { getSessionCookie } from 'better-auth/cookies'
import { type NextRequest, NextResponse } from 'next/server'

/** Ways in that need no session: the door itself, the check of a dossier, which anyone may make, and the shell of the screens on site, which holds nothing. */
const OPEN = /^\/(sign-in|setup|invitation|check|site)(\/|$)/

/**
 * Send people without a session cookie to the door. It is a convenience and never the only check: every page, action and route looks up the session
 * and authorises by itself.
 */
export function proxy(request: NextRequest): NextResponse {
  if (OPEN.test(request.nextUrl.pathname) || getSessionCookie(request, { cookiePrefix: 'underwrap' }))
    return NextResponse.next()
  return NextResponse.redirect(new URL('/sign-in', request.url))
}

/** Routes answer for themselves and are left out: a body that passes through here is cut at ten megabytes, and photos are larger. */
export const config = {
  matcher: ['/((?!api/|_next/|fonts/|icons/|favicon|manifest|.*\\.(?:svg|png|ico|woff2|webmanifest|txt|js)$).*)'],
}
