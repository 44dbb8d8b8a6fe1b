import { SITE_PACK_BYTES_AT_MOST } from '@/lib/domain/capture/site-pack'
import { done, type Result, refused } from '@/lib/domain/result'
import type { Refusal } from './refusal'

/** A pack as JSON in bytes. Refuses `not-decided` (`record-too-large-for-a-device`) beyond 24 MB: a device would not keep a handful of them. */
export function packBytes(pack: object): Result<Uint8Array<ArrayBuffer>, Refusal> {
  const bytes = new TextEncoder().encode(JSON.stringify(pack))
  return bytes.length <= SITE_PACK_BYTES_AT_MOST
    ? done(bytes)
    : refused({
        code: 'not-decided',
        why: 'record-too-large-for-a-device',
        detail: [`${bytes.length} bytes, at most ${SITE_PACK_BYTES_AT_MOST}`],
      })
}
