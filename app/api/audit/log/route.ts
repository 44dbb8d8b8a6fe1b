import { exportLog } from '@/lib/server/commands/export-log'
import { answer } from '../../answer'

/** The whole log of the reader's organisation as one file that anyone can check. */
export async function GET(): Promise<Response> {
  return answer(async (actor) => {
    const file = await exportLog(actor, {})
    if (!file.ok) return file
    return new Response(file.value.body, {
      headers: {
        'content-type': 'text/plain; charset=utf-8',
        'content-length': String(file.value.sizeBytes),
        'content-disposition': `attachment; filename="${file.value.fileName}"`,
        'x-content-type-options': 'nosniff',
        'cache-control': 'private, no-store',
      },
    })
  })
}
