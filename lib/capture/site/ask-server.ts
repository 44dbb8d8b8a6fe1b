const WAIT_MS = 60_000

/** Ask the server for JSON; null when no answer came, or none that can be read. */
export async function askServer(
  path: string,
  init: RequestInit = {},
  send: typeof fetch = (input, options) => fetch(input, options),
): Promise<unknown> {
  try {
    const reply = await send(path, { cache: 'no-store', signal: AbortSignal.timeout(WAIT_MS), ...init })
    return await reply.json()
  } catch (cause) {
    if (cause instanceof TypeError || cause instanceof SyntaxError || cause instanceof DOMException) return null
    throw cause
  }
}

/** The refusal in an answer; null when it holds none. */
export function refusalIn(json: unknown): { code: string; [fact: string]: unknown } | null {
  if (json === null || typeof json !== 'object' || !('error' in json)) return null
  const { error } = json
  return error !== null && typeof error === 'object' && 'code' in error && typeof error.code === 'string'
    ? { ...error, code: error.code }
    : { code: 'no-answer' }
}
