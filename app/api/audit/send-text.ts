import type { Result } from '@/lib/domain/result'
import type { Refusal } from '@/lib/server/commands/refusal'

/** A text as a download, or its refusal. Caches keep nothing of it. */
export function sendText(
  file: Result<{ text: string; fileName: string }, Refusal>,
  contentType: string,
): Response | Result<never, Refusal> {
  if (!file.ok) return file
  return new Response(file.value.text, {
    headers: {
      'content-type': contentType,
      'content-disposition': `attachment; filename="${file.value.fileName}"`,
      'x-content-type-options': 'nosniff',
      'cache-control': 'private, no-store',
    },
  })
}
