import { join } from 'node:path'
import * as z from 'zod'
import { Sha256 } from '@/lib/domain/facts/fact'
import type { ExchangeRefusal, PieceStanding } from '@/lib/domain/outbox/exchange'
import { done, type Result, refused } from '@/lib/domain/result'
import { readPhotoHeader } from '@/lib/photo/photo-header'
import { DEFAULT_PHOTO_LIMITS } from '@/lib/photo/photo-intake'
import type { Actor } from '@/lib/server/auth/actor'
import type { Store } from '@/lib/server/store/store'
import { authorise } from './authorise'
import { invalid } from './command'
import { openDesk } from './open-desk'
import { createPieceFolder, type PieceFolder } from './receive-piece-folder'
import type { Refusal } from './refusal'

const Piece = z.strictObject({
  sha256: Sha256,
  offset: z.int().nonnegative(),
  sizeBytes: z.int().positive(),
})
const Standing = z.strictObject({ sha256: Sha256 })

const folders = new Map<string, PieceFolder>()

/** Where pieces lie in a store's own folder on this machine. */
export function pieceFolderOf(store: Pick<Store, 'dataDir'>): PieceFolder {
  const known = folders.get(store.dataDir)
  if (known) return known
  const made = createPieceFolder(join(store.dataDir, 'photo-pieces'))
  folders.set(store.dataDir, made)
  return made
}

/** How much of a photo the caller has sent: `{ sha256 }`. Refuses `invalid`, `not-allowed`. */
export async function pieceStanding(actor: Actor, input: unknown): Promise<Result<PieceStanding, Refusal>> {
  const form = Standing.safeParse(input)
  if (!form.success) return refused(invalid(form.error))
  const desk = await openDesk(actor)
  const barred = authorise(actor, 'any', desk.today(null), 'attach photo')
  return barred ? refused(barred) : done(await pieceFolderOf(desk.store).standingOf(actor, form.data.sha256))
}

/**
 * Take in one piece of a photo: `{ sha256, offset, sizeBytes }` with its bytes, read once it is known that the caller may attach photos. The last piece proves the digest and the
 * picture's header. Refuses `invalid`, `not-allowed`, `piece-misplaced` with where to go on, `pieces-full`, `photo-refused` (`digest-differs`, or as the intake does).
 */
export async function receivePiece(
  actor: Actor,
  input: unknown,
  readBytes: () => Promise<Result<Uint8Array, Refusal>>,
): Promise<Result<PieceStanding, Refusal | ExchangeRefusal>> {
  const form = Piece.safeParse(input)
  if (!form.success) return refused(invalid(form.error))
  const desk = await openDesk(actor)
  const barred = authorise(actor, 'any', desk.today(null), 'attach photo')
  if (barred) return refused(barred)
  const { maxBytes } = DEFAULT_PHOTO_LIMITS
  if (form.data.sizeBytes > maxBytes)
    return refused({ code: 'photo-refused', reason: 'too-large', detail: `at most ${maxBytes} bytes` })
  const bytes = await readBytes()
  if (!bytes.ok) return bytes
  const folder = pieceFolderOf(desk.store)
  const added = await folder.append(actor, form.data, bytes.value)
  if (!added.ok)
    return added.error.code === 'digest-differs'
      ? refused({ code: 'photo-refused', reason: 'digest-differs', detail: '' })
      : refused(added.error)
  const whole = added.value.isWhole ? await folder.read(actor, form.data.sha256) : null
  const header = whole && (await readPhotoHeader(whole, DEFAULT_PHOTO_LIMITS))
  if (!header || header.ok) return added
  await folder.drop(actor, form.data.sha256)
  return refused({ code: 'photo-refused', reason: header.error.code, detail: '' })
}
