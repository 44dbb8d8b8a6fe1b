/** An answer "no" for the person at the terminal: one clear line. */
export class PlainError extends Error {}

/** One line for the terminal about anything thrown. */
export function lineOf(cause: unknown): string {
  const text = cause instanceof Error ? cause.message : String(cause)
  return text.replaceAll(/\s*\n\s*/g, ' ').slice(0, 600)
}
