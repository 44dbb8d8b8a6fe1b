import { done, type Result, refused } from '@/lib/domain/result'
import { isOpen, type OutboxEntry, type OutboxOwner } from './outbox-entry'
import { FRAME_BYTES, frameSeal, keyOf, PASSPHRASE_LENGTH_MIN, ROUNDS, writeHead } from './outbox-file'
import type { OutboxStore } from './outbox-store'

/** The list at the start of a file's content. */
export type OutboxFileList = {
  owner: OutboxOwner
  writtenAt: number
  entries: OutboxEntry[]
  photos: { sha256: string; sizeBytes: number }[]
}

export type WriteFileRefusal = { code: 'passphrase-short'; lengthMin: number } | { code: 'nothing-open' }

/**
 * Write what one person has not sent into an encrypted file, with what was set aside, and change nothing on the device: what arrives by hand and later by network is received once.
 * Refuses `passphrase-short`, `nothing-open`.
 */
export async function writeOutboxFile(
  from: { store: OutboxStore; owner: OutboxOwner; nowMs: number },
  passphrase: string,
): Promise<Result<Blob, WriteFileRefusal>> {
  if (passphrase.length < PASSPHRASE_LENGTH_MIN)
    return refused({ code: 'passphrase-short', lengthMin: PASSPHRASE_LENGTH_MIN })
  const { store, owner } = from
  const entries = (await store.entries(owner)).filter((one) => one.state !== 'sent')
  if (!entries.some(isOpen)) return refused({ code: 'nothing-open' })
  const blobs: Blob[] = []
  const photos: OutboxFileList['photos'] = []
  for (const sha256 of new Set(entries.flatMap((one) => one.photos))) {
    const blob = await store.photo(owner, sha256)
    if (!blob) continue
    blobs.push(blob)
    photos.push({ sha256, sizeBytes: blob.size })
  }
  const list: OutboxFileList = { owner, writtenAt: from.nowMs, entries, photos }
  const json = new TextEncoder().encode(JSON.stringify(list))
  return done(await sealed(new Blob([numberBytes(json.length), json, ...blobs]), passphrase))
}

async function sealed(content: Blob, passphrase: string): Promise<Blob> {
  const salt = crypto.getRandomValues(new Uint8Array(16))
  const nonceStart = crypto.getRandomValues(new Uint8Array(8))
  const head = writeHead(ROUNDS, salt, nonceStart)
  const key = await keyOf(passphrase, { rounds: ROUNDS, salt })
  const parts: BlobPart[] = [head]
  for (let frameNo = 0, at = 0; at < content.size; frameNo++, at += FRAME_BYTES) {
    const isLast = at + FRAME_BYTES >= content.size
    const plain = await content.slice(at, at + FRAME_BYTES).arrayBuffer()
    const closed = await crypto.subtle.encrypt(frameSeal(head, nonceStart, frameNo, isLast), key, plain)
    // a blob of parts may lie on the disk: a day's photos need not fit into memory twice
    parts.push(new Blob([new Uint8Array([isLast ? 1 : 0]), numberBytes(closed.byteLength), closed]))
  }
  return new Blob(parts, { type: 'application/octet-stream' })
}

function numberBytes(value: number): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(4)
  new DataView(bytes.buffer).setUint32(0, value)
  return bytes
}
