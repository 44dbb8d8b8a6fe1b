import { betterAuth } from 'better-auth'
import { drizzleAdapter } from 'better-auth/adapters/drizzle'
import { APIError, createAuthMiddleware } from 'better-auth/api'
import { nextCookies } from 'better-auth/next-js'
import { organization as organisations } from 'better-auth/plugins/organization'
import { eq } from 'drizzle-orm'
import { account, invitation, member, organization, session, user, verification } from '@/db/auth-schema'
import type { Queries } from '@/db/client'
import { accountPersons } from '@/db/schema'
import { countTry, forgetTries, PASSWORD_TRIES } from './count-try'

const HALF_A_DAY_SECONDS = 43_200
export const PASSWORD_LENGTH = { min: 12, max: 128 } as const

export type AuthSettings = { db: Queries; secret: string; baseUrl: string; trustedOrigins?: string[] }

/**
 * Sign-in by e-mail and password. Nobody signs up: accounts come from the setup and from invitations. A session lasts half a day, in a cookie that
 * scripts cannot read; it is secure wherever the address is https. Wrong passwords are counted per account, whatever path they come by.
 */
export function createAuth({ db, secret, baseUrl, trustedOrigins = [] }: AuthSettings) {
  return betterAuth({
    appName: 'Underwrap',
    baseURL: baseUrl,
    secret,
    trustedOrigins,
    database: drizzleAdapter(db, {
      provider: 'pg',
      schema: { user, session, account, verification, organization, member, invitation },
    }),
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: PASSWORD_LENGTH.min,
      maxPasswordLength: PASSWORD_LENGTH.max,
    },
    session: { expiresIn: HALF_A_DAY_SECONDS, updateAge: 3600, cookieCache: { enabled: false } },
    rateLimit: { enabled: true, window: 60, max: 120 },
    telemetry: { enabled: false },
    logger: { level: 'error' },
    advanced: {
      cookiePrefix: 'underwrap',
      useSecureCookies: baseUrl.startsWith('https://'),
      defaultCookieAttributes: { httpOnly: true, sameSite: 'lax', path: '/' },
    },
    databaseHooks: {
      session: {
        create: {
          before: async (made) => {
            const [home] = await db
              .select({ tenant: accountPersons.tenant })
              .from(accountPersons)
              .where(eq(accountPersons.userId, made.userId))
              .limit(1)
            return { data: { ...made, activeOrganizationId: home?.tenant ?? null } }
          },
        },
      },
    },
    hooks: {
      before: createAuthMiddleware(async (context) => {
        if (context.path !== '/sign-in/email') return
        const counted = await countTry(db, passwordKey(context.body?.email), PASSWORD_TRIES)
        if (!counted.ok)
          throw new APIError('TOO_MANY_REQUESTS', {
            code: 'too-many-tries',
            retryAfterSeconds: counted.error.retryAfterSeconds,
          })
      }),
      after: createAuthMiddleware(async (context) => {
        if (context.path === '/sign-in/email' && context.context.newSession)
          await forgetTries(db, passwordKey(context.body?.email))
      }),
    },
    plugins: [
      organisations({ allowUserToCreateOrganization: false, disableOrganizationDeletion: true }),
      nextCookies(),
    ],
  })
}

export type Auth = ReturnType<typeof createAuth>

/** The key under which wrong passwords of an account are counted. */
export function passwordKey(email: unknown): string {
  return `password:${typeof email === 'string' ? email.trim().toLowerCase().slice(0, 254) : ''}`
}
