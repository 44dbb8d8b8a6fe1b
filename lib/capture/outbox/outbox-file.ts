/**
 * The file that carries an outbox by hand, when a device never gets a network. Version 1, numbers big-endian:
 *
 *     8 bytes   the text UWOUTBOX
 *     1 byte    version, 1
 *     4 bytes   PBKDF2 rounds (SHA-256), 600,000 or more
 *     16 bytes  salt
 *     8 bytes   start of every frame's nonce
 *     frames    each: 1 byte, 1 for the last frame and 0 before it; 4 bytes length of what follows; AES-256-GCM of at most 1 MiB of the content
 *
 * A frame's nonce is those 8 bytes and the frame's number in 4; its associated data are the 37 bytes of the head, the frame's number and its first byte. So frames cannot be changed, left out,
 * put in another order, or cut off at the end. The content is: 4 bytes length of the list, the list as JSON (`OutboxFileList`), then the photos' bytes one after the other in its order.
 */
export const MAGIC = new TextEncoder().encode('UWOUTBOX')
export const FILE_VERSION = 1
/** @source OWASP password storage, PBKDF2-HMAC-SHA256 */
export const ROUNDS = 600_000
/** A file that asks for more would only keep the reader busy. */
export const ROUNDS_AT_MOST = 10_000_000
export const HEAD_BYTES = 37
export const FRAME_BYTES = 1_048_576
export const TAG_BYTES = 16
export const PASSPHRASE_LENGTH_MIN = 12

export type FileHead = {
  bytes: Uint8Array<ArrayBuffer>
  rounds: number
  salt: Uint8Array<ArrayBuffer>
  nonceStart: Uint8Array
}

/** Write the head of a file. */
export function writeHead(rounds: number, salt: Uint8Array, nonceStart: Uint8Array): Uint8Array<ArrayBuffer> {
  const head = new Uint8Array(HEAD_BYTES)
  head.set(MAGIC, 0)
  head[8] = FILE_VERSION
  new DataView(head.buffer).setUint32(9, rounds)
  head.set(salt, 13)
  head.set(nonceStart, 29)
  return head
}

/** The key that a passphrase gives with the head's salt. Unicode is composed first: the same words from another keyboard are the same. */
export async function keyOf(passphrase: string, head: Pick<FileHead, 'rounds' | 'salt'>): Promise<CryptoKey> {
  const text = new TextEncoder().encode(passphrase.normalize('NFC'))
  const raw = await crypto.subtle.importKey('raw', text, 'PBKDF2', false, ['deriveKey'])
  return crypto.subtle.deriveKey(
    { name: 'PBKDF2', hash: 'SHA-256', salt: head.salt, iterations: head.rounds },
    raw,
    { name: 'AES-GCM', length: 256 },
    false,
    ['encrypt', 'decrypt'],
  )
}

/** Nonce and associated data of one frame. */
export function frameSeal(head: Uint8Array, nonceStart: Uint8Array, frameNo: number, isLast: boolean): AesGcmParams {
  const iv = new Uint8Array(12)
  iv.set(nonceStart, 0)
  new DataView(iv.buffer).setUint32(8, frameNo)
  const additionalData = new Uint8Array(HEAD_BYTES + 5)
  additionalData.set(head, 0)
  new DataView(additionalData.buffer).setUint32(HEAD_BYTES, frameNo)
  additionalData[HEAD_BYTES + 4] = isLast ? 1 : 0
  return { name: 'AES-GCM', iv, additionalData }
}
