import { done, type Result, refused } from '@/lib/domain/result'
import { parseCheckpoint, type SignedCheckpoint } from '@/lib/evidence/checkpoint'
import { parseVkey, type Vkey } from '@/lib/evidence/vkey'
import { readCertificate } from './cms/certificate'

/** What a reader already trusts: a log key, certificates by their SHA-256, an earlier checkpoint. All that is given must lead to the file. */
export type Trusted = { vkey: Vkey | null; certificates: string[]; checkpoint: SignedCheckpoint | null }

export const NOTHING_TRUSTED: Trusted = { vkey: null, certificates: [], checkpoint: null }

/** What a reader gives, each as it comes: the bytes of a key file, a checkpoint's text, a fingerprint as typed. */
export type Given = { key?: Uint8Array; checkpoint?: string; fingerprint?: string }

export type GivenRefusal = { code: 'key-unreadable' | 'checkpoint-unreadable' | 'fingerprint-unreadable' }

/**
 * Parse what a reader trusts. A key is a vkey line, or a certificate in PEM or DER; a fingerprint is the SHA-256 of a certificate, 64 hex digits with or without colons.
 * Refuses `key-unreadable`, `checkpoint-unreadable`, `fingerprint-unreadable`.
 */
export function parseTrusted(given: Given): Result<Trusted, GivenRefusal> {
  const trusted: Trusted = { vkey: null, certificates: [], checkpoint: null }
  if (given.key) {
    const text = new TextDecoder().decode(given.key).trim()
    const vkey = parseVkey(text)
    const certificate = vkey.ok ? null : readCertificate(derOfPem(text) ?? given.key)
    if (vkey.ok) trusted.vkey = vkey.value
    else if (certificate) trusted.certificates.push(certificate.sha256)
    else return refused({ code: 'key-unreadable' })
  }
  if (given.checkpoint !== undefined) {
    // line breaks may have suffered on the way through a mail or a form
    const checkpoint = parseCheckpoint(`${given.checkpoint.replace(/\r\n/g, '\n').trim()}\n`)
    if (!checkpoint.ok) return refused({ code: 'checkpoint-unreadable' })
    trusted.checkpoint = checkpoint.value
  }
  if (given.fingerprint !== undefined) {
    const digits = given.fingerprint.replace(/[\s:]/g, '').toLowerCase()
    if (!/^[0-9a-f]{64}$/.test(digits)) return refused({ code: 'fingerprint-unreadable' })
    trusted.certificates.push(digits)
  }
  return done(trusted)
}

function derOfPem(text: string): Uint8Array | null {
  const [, body] = /^-----BEGIN CERTIFICATE-----([A-Za-z0-9+/=\s]+)-----END CERTIFICATE-----/m.exec(text) ?? []
  if (!body) return null
  try {
    return Uint8Array.from(atob(body.replace(/\s/g, '')), (character) => character.charCodeAt(0))
  } catch {
    return null
  }
}
