import { and, eq } from 'drizzle-orm'
import * as z from 'zod'
import { photos } from '@/db/schema'
import { Sha256, type StreamId } from '@/lib/domain/facts/fact'
import { done, refused } from '@/lib/domain/result'
import { sniffType } from '@/lib/photo/sniff-type'
import { authorise } from './authorise'
import { command } from './command'
import { placeOf } from './place-of'

export const PHOTO_SIZES = ['original', 'rendition', 'thumb'] as const
const OpenPhoto = z.strictObject({ sha256: Sha256, size: z.enum(PHOTO_SIZES) })

/**
 * The bytes of a photo attached in the caller's tenant, by the digest of its original: `{ sha256, size }`. Refuses `invalid`, `not-found` (another tenant's
 * photo, or one disposed of), `not-allowed` when the caller has no role in any project that it is attached in.
 */
export const openPhoto = command(OpenPhoto, async (desk, form) => {
  const { actor, store } = desk
  const rows = await store.db.queries
    .select()
    .from(photos)
    .where(and(eq(photos.tenant, actor.tenant), eq(photos.sha256, form.sha256)))
  const [first] = rows
  if (!first) return refused({ code: 'not-found' })
  let barred = null
  for (const repair of new Set(rows.map((row) => row.repair as StreamId))) {
    const facts = await desk.factsOf(repair)
    const place = facts && (await placeOf(desk, repair, facts))
    barred = place
      ? authorise(actor, place.project, desk.today(place.offset), 'read record')
      : { code: 'not-found' as const }
    if (!barred) break
  }
  if (barred) return refused(barred)
  const digest =
    form.size === 'original' ? first.sha256 : form.size === 'rendition' ? first.renditionSha256 : first.thumbSha256
  const bytes = await store.photos.read(digest)
  return bytes
    ? done({ bytes, mediaType: `image/${sniffType(bytes) ?? 'jpeg'}`, digest })
    : refused({ code: 'not-found' })
})
