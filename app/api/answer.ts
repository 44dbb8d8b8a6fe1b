import { type Result, refused } from '@/lib/domain/result'
import type { Actor } from '@/lib/server/auth/actor'
import { currentActor } from '@/lib/server/auth/current-actor'
import type { Refusal, RefusalCode } from '@/lib/server/commands/refusal'

const STATUS: Partial<Record<RefusalCode, number>> = {
  invalid: 400,
  'not-signed-in': 401,
  'not-found': 404,
  'heads-moved': 409,
  'exists-already': 409,
  'id-taken': 409,
  'value-moved': 409,
  'photo-refused': 422,
  'late-reason-missing': 422,
  'too-many-tries': 429,
}
const REFUSED_STATUS = 403

/** Answer a request for whoever is signed in: the work's own response, or its refusal as JSON with a status. Nothing of it is kept by caches on the way. */
export async function answer(work: (actor: Actor) => Promise<Response | Result<unknown, Refusal>>): Promise<Response> {
  const actor = await currentActor()
  const outcome = actor ? await work(actor) : refused<Refusal>({ code: 'not-signed-in' })
  return outcome instanceof Response ? outcome : answerJson(outcome)
}

/** A result as JSON: 200 with the value, or the refusal's status. */
export function answerJson(outcome: Result<unknown, Refusal>): Response {
  const status = outcome.ok ? 200 : (STATUS[outcome.error.code] ?? REFUSED_STATUS)
  return Response.json(outcome, { status, headers: { 'cache-control': 'private, no-store' } })
}

/** Whether a request that changes something comes from one of our own pages. Browsers name the origin of every POST. */
export function isFromHere(request: Request): boolean {
  const origin = request.headers.get('origin')
  if (origin === null) return request.headers.get('sec-fetch-site') !== 'cross-site'
  return URL.canParse(origin) && new URL(origin).host === request.headers.get('host')
}
