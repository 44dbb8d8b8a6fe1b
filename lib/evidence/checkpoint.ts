import { DIGEST_BYTES } from '@/lib/calc/merkle-tree'
import { done, type Result, refused } from '@/lib/domain/result'
import { base64Of, parseBase64 } from './base64'
import { hexOf } from './digest'
import { isSignedBy, type LogKey, signWith } from './log-key'
import { parseOrigin } from './origin'
import type { Vkey } from './vkey'

/** What a checkpoint says: this log had `size` leaves and this root (32 bytes). */
export type Checkpoint = { origin: string; size: number; root: Uint8Array }

/** A signed checkpoint as parsed; its signatures are claims until `verifyCheckpoint` was asked. */
export type SignedCheckpoint = Checkpoint & {
  signatures: { keyName: string; keyId: string; signature: Uint8Array }[]
}

export type CheckpointFault = {
  code: 'checkpoint-malformed'
  at: 'length' | 'form' | 'origin' | 'size' | 'root' | 'signature'
}

const LENGTH_AT_MOST = 16_384
const SIGNATURES_AT_MOST = 16

/** The three lines that are signed. @throws RangeError for no origin, a size that is no whole number from 1, a root that is not 32 bytes */
export function checkpointText({ origin, size, root }: Checkpoint): string {
  if (parseOrigin(origin) === null) throw new RangeError(`Expected an origin, received ${origin}`)
  if (!Number.isSafeInteger(size) || size < 1) throw new RangeError(`Expected a size from 1, received ${size}`)
  if (root.length !== DIGEST_BYTES) throw new RangeError(`Expected a root of 32 bytes, received ${root.length}`)
  return `${origin}\n${size}\n${base64Of(root)}\n`
}

/** The whole note: text, empty line, one signature line. @throws RangeError as `checkpointText` does, and when the key's name is not the origin */
export function signCheckpoint(checkpoint: Checkpoint, key: LogKey): string {
  const text = checkpointText(checkpoint)
  const { name, keyId } = key.vkey
  if (name !== checkpoint.origin)
    throw new RangeError(`Expected a key of ${checkpoint.origin}, received one of ${name}`)
  const id = Uint8Array.from({ length: 4 }, (_, at) => Number.parseInt(keyId.slice(2 * at, 2 * at + 2), 16))
  const signature = signWith(key, new TextEncoder().encode(text))
  return `${text}\n— ${name} ${base64Of(Uint8Array.of(...id, ...signature))}\n`
}

/**
 * Parse a checkpoint from outside, strictly (FORMAT.md section 3). Refuses `checkpoint-malformed` with the place. Signature lines of other
 * names are kept too; they must have the form.
 */
export function parseCheckpoint(note: string): Result<SignedCheckpoint, CheckpointFault> {
  const wrong = (at: CheckpointFault['at']) => refused({ code: 'checkpoint-malformed', at } as const)
  if (note.length > LENGTH_AT_MOST) return wrong('length')
  const [origin = '', sizeText = '', rootText = '', empty, ...rest] = note.split('\n')
  if (empty !== '' || rest.pop() !== '' || rest.length === 0) return wrong('form')
  if (rest.length > SIGNATURES_AT_MOST) return wrong('length')
  if (parseOrigin(origin) === null) return wrong('origin')
  const size = /^[1-9][0-9]{0,15}$/.test(sizeText) ? Number(sizeText) : Number.NaN
  if (!Number.isSafeInteger(size)) return wrong('size')
  const root = parseBase64(rootText)
  if (root?.length !== DIGEST_BYTES) return wrong('root')
  const signatures: SignedCheckpoint['signatures'] = []
  for (const line of rest) {
    const [, keyName, encoded] = /^— ([^\s+]+) ([A-Za-z0-9+/=]+)$/.exec(line) ?? []
    const bytes = encoded ? parseBase64(encoded) : null
    if (!keyName || !bytes || bytes.length < 5) return wrong('signature')
    signatures.push({ keyName, keyId: hexOf(bytes.slice(0, 4)), signature: bytes.slice(4) })
  }
  return done({ origin, size, root, signatures })
}

/** Whether the checkpoint is signed by this key, whose name must be the checkpoint's origin; any signature that claims the key and fails is a no. */
export function verifyCheckpoint(checkpoint: SignedCheckpoint, vkey: Vkey): boolean {
  if (vkey.name !== checkpoint.origin) return false
  const claimed = checkpoint.signatures.filter((one) => one.keyName === vkey.name && one.keyId === vkey.keyId)
  const message = new TextEncoder().encode(checkpointText(checkpoint))
  return claimed.length > 0 && claimed.every((one) => isSignedBy(vkey, message, one.signature))
}

/** The short digest that people compare: the first 16 hex digits of the root in groups of four. */
export function shortDigest(root: Uint8Array): string {
  return (hexOf(root).slice(0, 16).match(/.{4}/g) ?? []).join(' ')
}
