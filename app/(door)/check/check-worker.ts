import type { ByteSource } from '@/lib/verify/byte-source'
import { parseTrusted } from '@/lib/verify/trusted'
import { verifyFile } from '@/lib/verify/verify-file'
import type { CheckNews, CheckOrder } from './check-messages'

/** Runs beside the page, so that it stays alive while a large file is read. */
const tell = (news: CheckNews): void => self.postMessage(news)

self.addEventListener('message', (event: MessageEvent<CheckOrder>) => {
  check(event.data).catch((cause: unknown) =>
    tell({ kind: 'failed', text: cause instanceof Error ? cause.message : String(cause) }),
  )
})
tell({ kind: 'ready' })

async function check({ file, given }: CheckOrder): Promise<void> {
  const trusted = parseTrusted(given)
  if (!trusted.ok) {
    tell({ kind: 'given-refused', code: trusted.error.code })
    return
  }
  const source: ByteSource = {
    sizeBytes: file.size,
    read: async (offset, length) => new Uint8Array(await file.slice(offset, offset + length).arrayBuffer()),
  }
  const onProgress = (doneBytes: number): void => tell({ kind: 'progress', doneBytes, sizeBytes: file.size })
  tell({ kind: 'answer', answer: await verifyFile(source, { trusted: trusted.value, onProgress }) })
}
