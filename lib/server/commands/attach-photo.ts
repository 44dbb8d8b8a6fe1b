import * as z from 'zod'
import { StreamId, streamKind } from '@/lib/domain/facts/fact'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { done, type Result, refused } from '@/lib/domain/result'
import { DEFAULT_PHOTO_LIMITS, type PhotoRefusal } from '@/lib/photo/photo-intake'
import { takeInPhoto } from '@/lib/photo/take-in'
import type { Actor } from '@/lib/server/auth/actor'
import { authorise } from './authorise'
import { command } from './command'
import type { Kept } from './desk'
import { Entry } from './entry'
import { lateRefusal } from './late-entry'
import { photoBodyOf } from './photo-body'
import { placeOf } from './place-of'
import type { Refusal } from './refusal'

const AttachPhoto = z.strictObject({
  stream: StreamId.refine((id) => streamKind(id) === 'repair', 'a repair'),
  body: REPAIR_BODIES['photo-attached']
    .unwrap()
    .omit({ photo: true })
    .refine((body) => !body.scan || body.demand === undefined, {
      path: ['demand'],
      message: 'the scan of a paper is no photo of the work',
    }),
  ...Entry,
})

export type AttachedPhoto = Kept & { sha256: string; thumbSha256: string }

/** The bytes of a photo, read once it is known that the caller may attach it. */
export type PhotoBytes = () => Promise<Result<Uint8Array, Refusal>>

/**
 * Attach a photo to a point, or the scan of a tally sheet (`scan`): `{ stream, body: { point, attempt, caption, demand?, mark?, record?, scan? }, ...Entry }` with its bytes. The original is kept byte for
 * byte. A photo sent again under the same fact id is answered as it was. Refuses `invalid`, `not-found`, `not-allowed`, `late-reason-missing`,
 * `photo-refused` with the reason, and whatever reading the bytes refuses.
 */
export function attachPhoto(
  actor: Actor,
  input: unknown,
  readBytes: PhotoBytes,
): Promise<Result<AttachedPhoto, Refusal>> {
  return command(AttachPhoto, async (desk, form): Promise<Result<AttachedPhoto, Refusal>> => {
    const kept = await desk.streamOf(form.stream)
    const place = kept && (await placeOf(desk, form.stream, kept.facts))
    if (!kept || !place) return refused({ code: 'not-found' })
    const barred = authorise(desk.actor, place.project, desk.today(place.offset), 'attach photo')
    if (barred) return refused(barred)
    const before = kept.facts.find((fact) => fact.id === form.id)
    if (before?.kind === 'photo-attached') {
      const { sha256, thumb } = before.body.photo
      return done({
        stream: form.stream,
        length: kept.facts.length,
        fact: before.id,
        facts: [before.id],
        sha256,
        thumbSha256: thumb.sha256,
      })
    }
    const bytes = await readBytes()
    if (!bytes.ok) return bytes
    const taken = await takeInPhoto({ bytes: bytes.value, store: desk.store.photos, limits: DEFAULT_PHOTO_LIMITS })
    if (!taken.ok) return refused({ code: 'photo-refused', reason: taken.error.code, detail: detailOf(taken.error) })
    const photo = photoBodyOf(taken.value)
    if (!photo.ok) return refused({ code: 'photo-refused', reason: photo.error.code, detail: '' })
    const fact = desk.make({
      stream: form.stream,
      kind: 'photo-attached',
      body: { ...form.body, photo: photo.value },
      entry: form,
      offset: place.offset,
    })
    const late = lateRefusal(desk, fact)
    if (late) return refused(late)
    const appended = await desk.append([fact], [])
    return appended.ok
      ? done({ ...appended.value, sha256: photo.value.sha256, thumbSha256: photo.value.thumb.sha256 })
      : appended
  })(actor, input)
}

function detailOf(refusal: PhotoRefusal): string {
  switch (refusal.code) {
    case 'damaged':
      return refusal.reason
    case 'too-large':
      return `${refusal.sizeBytes} bytes, at most ${refusal.maxBytes}`
    case 'too-many-pixels':
      return `${refusal.widthPx} × ${refusal.heightPx} pixels, at most ${refusal.maxPixels}`
    default:
      return ''
  }
}
