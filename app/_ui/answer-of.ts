import type { Result } from '@/lib/domain/result'

/** The answer of a server action; `no-answer` where the server was not reached. @throws whatever else went wrong */
export async function answerOf<V, E extends { code: string }>(
  ask: () => Promise<Result<V, E>>,
): Promise<Result<V, E | { code: 'no-answer' }>> {
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
