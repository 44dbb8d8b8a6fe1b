import type { ExchangeRefusal } from '@/lib/domain/outbox/exchange'
import type { Result } from '@/lib/domain/result'
import type { Refusal } from '@/lib/server/commands/refusal'
import { answerJson } from '../answer'

const STATUS: Record<ExchangeRefusal['code'], number> = {
  'version-too-old': 426,
  'version-too-new': 426,
  'piece-misplaced': 409,
  'pieces-full': 507,
}

/** The answer to a device's outbox: as every answer, with the refusals that only an exchange has, and fields beside the value. */
export function answerExchange(outcome: Result<unknown, Refusal | ExchangeRefusal>, beside: object = {}): Response {
  if (!outcome.ok && !isOfExchange(outcome.error)) return answerJson({ ok: false, error: outcome.error })
  const status = outcome.ok ? 200 : isOfExchange(outcome.error) ? STATUS[outcome.error.code] : 403
  return Response.json({ ...outcome, ...beside }, { status, headers: { 'cache-control': 'private, no-store' } })
}

function isOfExchange(error: Refusal | ExchangeRefusal): error is ExchangeRefusal {
  return Object.hasOwn(STATUS, error.code)
}
