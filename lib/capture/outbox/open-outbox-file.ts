import * as z from 'zod'
import { OUTBOX_COMMANDS } from '@/lib/domain/outbox/exchange'
import { done, type Result, refused } from '@/lib/domain/result'
import { digestOfBlob } from './digest-of-blob'
import type { OutboxEntry, OutboxOwner } from './outbox-entry'
import {
  FILE_VERSION,
  type FileHead,
  FRAME_BYTES,
  frameSeal,
  HEAD_BYTES,
  keyOf,
  MAGIC,
  ROUNDS,
  ROUNDS_AT_MOST,
  TAG_BYTES,
} from './outbox-file'
import type { KeptPhoto } from './outbox-store'

/** `passphrase-wrong` also answers for a file that was changed or cut: the two cannot be told apart. */
export type OpenFileRefusal =
  | { code: 'not-an-outbox-file' }
  | { code: 'file-version-unknown'; version: number }
  | { code: 'passphrase-wrong' }
  | { code: 'file-damaged'; at: string }

export type OpenedFile = { owner: OutboxOwner; writtenAt: number; entries: OutboxEntry[]; photos: KeptPhoto[] }

const Entry = z.object({
  tenant: z.string(),
  person: z.string(),
  id: z.uuid(),
  seq: z.number(),
  command: z.enum(OUTBOX_COMMANDS),
  input: z.looseObject({ stream: z.string(), body: z.unknown() }),
  photos: z.array(z.string().regex(/^[0-9a-f]{64}$/)),
  capturedAt: z.number(),
  madeOffline: z.boolean(),
  tries: z.int(),
  state: z.enum(['waiting', 'sending', 'refused', 'set aside']),
  refusal: z.looseObject({ code: z.string() }).nullable(),
  settled: z.object({ at: z.number(), reason: z.string(), againAs: z.string().nullable() }).nullable(),
  replaces: z.string().nullable(),
  receipt: z.null(),
})
const List = z.object({
  owner: z.object({ tenant: z.string(), person: z.string() }),
  writtenAt: z.number(),
  entries: z.array(Entry),
  photos: z.array(z.object({ sha256: z.string(), sizeBytes: z.int().nonnegative() })),
})

/** Open a file that `writeOutboxFile` wrote. Every length in it is taken as hostile, and every photo's digest is checked. */
export async function openOutboxFile(file: Blob, passphrase: string): Promise<Result<OpenedFile, OpenFileRefusal>> {
  const head = await readHead(file)
  if (!head.ok) return head
  const opened = await unsealed(file, head.value, passphrase)
  if (!opened.ok) return opened
  const content = opened.value
  const listBytes = content.size < 4 ? 0 : await numberAt(content, 0)
  const list = List.safeParse(parsedJson(await content.slice(4, 4 + listBytes).text()))
  if (!list.success) return refused({ code: 'file-damaged', at: 'list' })
  const photos: KeptPhoto[] = []
  let at = 4 + listBytes
  for (const { sha256, sizeBytes } of list.data.photos) {
    const blob = new Blob([await content.slice(at, at + sizeBytes).arrayBuffer()])
    if ((await digestOfBlob(blob)) !== sha256) return refused({ code: 'file-damaged', at: `photo ${sha256}` })
    photos.push({ sha256, blob })
    at += sizeBytes
  }
  const { owner, writtenAt, entries } = list.data
  return done({ owner, writtenAt, entries, photos })
}

async function readHead(file: Blob): Promise<Result<FileHead, OpenFileRefusal>> {
  const bytes = new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer())
  if (bytes.length < HEAD_BYTES || MAGIC.some((byte, at) => bytes[at] !== byte))
    return refused({ code: 'not-an-outbox-file' })
  const version = bytes[8] ?? 0
  if (version !== FILE_VERSION) return refused({ code: 'file-version-unknown', version })
  const rounds = new DataView(bytes.buffer).getUint32(9)
  if (rounds < ROUNDS || rounds > ROUNDS_AT_MOST) return refused({ code: 'file-damaged', at: 'rounds' })
  return done({ bytes, rounds, salt: bytes.slice(13, 29), nonceStart: bytes.slice(29, HEAD_BYTES) })
}

async function unsealed(file: Blob, head: FileHead, passphrase: string): Promise<Result<Blob, OpenFileRefusal>> {
  const key = await keyOf(passphrase, head)
  const parts: Blob[] = []
  let at = HEAD_BYTES
  for (let frameNo = 0; ; frameNo++) {
    if (file.size < at + 5) return refused({ code: 'passphrase-wrong' })
    const [mark] = new Uint8Array(await file.slice(at, at + 1).arrayBuffer())
    const lengthBytes = await numberAt(file, at + 1)
    at += 5
    if (lengthBytes > FRAME_BYTES + TAG_BYTES || at + lengthBytes > file.size)
      return refused({ code: 'passphrase-wrong' })
    const closed = await file.slice(at, at + lengthBytes).arrayBuffer()
    at += lengthBytes
    const isLast = mark === 1
    const plain = await crypto.subtle
      .decrypt(frameSeal(head.bytes, head.nonceStart, frameNo, isLast), key, closed)
      .catch(nullWhenWrong)
    if (plain === null) return refused({ code: 'passphrase-wrong' })
    parts.push(new Blob([plain]))
    if (isLast) return at === file.size ? done(new Blob(parts)) : refused({ code: 'file-damaged', at: 'end' })
  }
}

function nullWhenWrong(cause: unknown): null {
  if (cause instanceof DOMException) return null
  throw cause
}

async function numberAt(blob: Blob, at: number): Promise<number> {
  return new DataView(await blob.slice(at, at + 4).arrayBuffer()).getUint32(0)
}

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch (cause) {
    if (cause instanceof SyntaxError) return null
    throw cause
  }
}
