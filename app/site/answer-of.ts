import type { ShownRefusal } from '@/app/_ui/refusal-note'
import type { Result } from '@/lib/domain/result'

/** The answer of a server action; `no-answer` where the server was not reached. */
export async function answerOf<V>(ask: () => Promise<Result<V, ShownRefusal>>): Promise<Result<V, ShownRefusal>> {
  try {
    return await ask()
  } catch (cause) {
    if (
      cause instanceof TypeError ||
      (cause instanceof Error && /fetch|network|unexpected response/i.test(cause.message))
    )
      return { ok: false, error: { code: 'no-answer' } }
    throw cause
  }
}
