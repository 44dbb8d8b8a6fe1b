import type { Result } from '@/lib/domain/result'
import type { OutgoingFile } from '@/lib/server/commands/open-dossier'
import type { Refusal } from '@/lib/server/commands/refusal'

/** A dossier as a download, or its refusal. Frozen files may be kept by the browser; a copy for review is made anew each time. */
export function sendFile(file: Result<OutgoingFile, Refusal>, isFrozen: boolean): Response | Result<never, Refusal> {
  if (!file.ok) return file
  const { body, fileName, sizeBytes } = file.value
  return new Response(body, {
    headers: {
      'content-type': 'application/pdf',
      'content-length': String(sizeBytes),
      'content-disposition': `attachment; filename="${fileName}"`,
      'x-content-type-options': 'nosniff',
      'cache-control': isFrozen ? 'private, max-age=31536000, immutable' : 'private, no-store',
    },
  })
}
