import { createPrivateKey } from 'node:crypto'
import { FactId, PersonId } from '@/lib/domain/facts/fact'
import { type Fact, parseFact } from '@/lib/domain/facts/fact-kinds'
import { type SigningIdentity, signingIdentity } from '@/lib/dossier/sign/certificate'
import { makeCertificate } from '@/lib/dossier/sign/make-certificate'
import { type LogKey, makeLogKey } from '@/lib/evidence/log-key'
import { demoFacts } from '@/lib/server/demo/demo-facts'
import type { PhotoBook } from '@/lib/server/demo/photo-drawing'
import { type Received, sha256Hex } from './log-by-hand'

/** Who signs: a log key and a certificate with its key. */
export type Holder = { origin: string; key: LogKey; identity: SigningIdentity }

/** A holder with keys of its own. */
export async function holderByHand(seedByte: number, storeId = '00112233445566aa'): Promise<Holder> {
  const origin = `underwrap-demo/${storeId}/tenant-a`
  const { certificate, key } = await makeCertificate(
    'Plumbline-and-Thrice Inspection',
    new Date('2026-05-01T00:00:00Z'),
  )
  return {
    origin,
    key: makeLogKey(origin, new Uint8Array(32).fill(seedByte)),
    identity: signingIdentity(
      certificate,
      createPrivateKey({ key: Buffer.from(key), format: 'der', type: 'pkcs8' }),
      true,
      new Date('2026-05-02T00:00:00Z'),
    ),
  }
}

/** Bytes that stand for the rendition of a drawing: what they show is nothing to a checker. */
export const photoBytes = new Map<string, Uint8Array>()
const bookOf =
  (sizeBytes: number): PhotoBook =>
  (drawing) => {
    const bytes = new TextEncoder().encode(`rendition of ${drawing.key} `.padEnd(sizeBytes, drawing.key))
    const sha256 = sha256Hex(bytes)
    photoBytes.set(sha256, bytes)
    const face = { sha256, sizeBytes: bytes.length, widthPx: 1, heightPx: 1 }
    return {
      ...face,
      mediaType: 'image/jpeg',
      rendition: face,
      thumb: face,
      claims: {
        takenAt: drawing.takenAt,
        offset: null,
        latitude: null,
        longitude: null,
        camera: null,
        hasOriginalMetadata: true,
      },
      measures: {
        sharpness: 1,
        meanLightness: 0.5,
        shareDark: 0,
        shareBright: 0,
        dHash: sha256.slice(0, 16),
        pHash: sha256.slice(16, 32),
      },
    }
  }

let made = 0
/** A fact of any stream, parsed as a received one is. @throws Error when it is none */
export function factOf(stream: string, kind: string, body: unknown, at = '2026-05-01T08:00:00+01:00'): Fact {
  made += 1
  const id = FactId.parse(`0196d000-0000-7000-8000-${String(made).padStart(12, '0')}`)
  const moment = { observedAt: at, observedBy: 'QI', enteredAt: at, enteredBy: 'QI' }
  const parsed = parseFact({ v: 1, id, stream, kind, ...moment, device: { id: 'tab-1', clockOffsetMs: 0 }, body })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.error.faults))
  return parsed.value
}

/** The demonstration's facts in order of receipt, the holder's keys before them. */
export function receivedByHand({ key, identity }: Holder, photoBytesEach = 60): Received[] {
  const { sha256, subject, notBefore, notAfter } = identity.certificate
  const receipt = { receivedAt: '2026-05-01T08:00:10+01:00', receivedBy: PersonId.parse('QI') }
  return [
    {
      fact: factOf('key:log', 'log-key-taken', {
        vkey: key.vkey.text,
        replaces: null,
        endorsement: null,
        reason: 'first key of this log',
      }),
      ...receipt,
    },
    {
      fact: factOf('key:signature', 'signing-certificate-taken', {
        certificateSha256: sha256,
        subject,
        notBefore,
        notAfter,
        madeHere: true,
        reason: 'made at the start',
      }),
      ...receipt,
    },
    ...demoFacts(bookOf(photoBytesEach)).facts,
  ]
}
