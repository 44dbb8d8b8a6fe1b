'use client'
import { v7 } from 'uuid'
import { attachPhoto } from '@/app/_capture/attach-photo'
import { readNow } from '@/app/_capture/read-now'
import { hexDigestOf } from '@/lib/evidence/digest'

export type ScanAttached =
  | { kind: 'kept'; sha256: string; isHere: boolean }
  | { kind: 'refused'; refusal: { code: string; [fact: string]: unknown } }

/** Attach the scan of a tally sheet to a point as it is chosen, so that it is safe before the copy is keyed. It is no photo of the work and answers no demand. */
export async function attachScan(
  scan: Blob,
  of: { repair: string; point: string; attempt: number; sheet: string },
  clock: { utcOffset: string; clockKind: 'real' | 'demo' | 'test' },
): Promise<ScanAttached> {
  const sha256 = hexDigestOf(new Uint8Array(await scan.arrayBuffer()))
  const now = await readNow(clock.utcOffset, clock.clockKind)
  const sheet = of.sheet.trim()
  const attached = await attachPhoto(
    scan,
    {
      stream: `repair:${of.repair}`,
      observedAt: now,
      enteredAt: now,
      body: {
        point: of.point,
        attempt: of.attempt,
        caption: sheet === '' ? 'Scan of a paper tally' : `Scan of tally sheet ${sheet}`,
        scan: sheet === '' ? {} : { sheet },
      },
    },
    v7(),
  )
  return attached.kind === 'refused' ? attached : { kind: 'kept', sha256, isHere: attached.kind === 'on this device' }
}
