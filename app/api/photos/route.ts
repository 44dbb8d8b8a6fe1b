import { done, type Result, refused } from '@/lib/domain/result'
import { DEFAULT_PHOTO_LIMITS } from '@/lib/photo/photo-intake'
import { attachPhoto } from '@/lib/server/commands/attach-photo'
import type { Refusal } from '@/lib/server/commands/refusal'
import { answer, isFromHere } from '../answer'
import { readBounded } from './read-bounded'

/** Header that says where the photo belongs: JSON of attachPhoto's input, percent-encoded. The body is the photo's bytes. */
const ABOUT = 'x-underwrap-photo'

/** Take in a photo and attach it to a point. The body is read only once the caller is known to be allowed, and no further than the limit. */
export function POST(request: Request): Promise<Response> {
  return answer(async (actor) => {
    if (!isFromHere(request)) return refused<Refusal>({ code: 'not-found' })
    const about = aboutOf(request.headers.get(ABOUT))
    if (!about.ok) return about
    return attachPhoto(actor, about.value, async () => {
      const bytes = await readBounded(request.body, DEFAULT_PHOTO_LIMITS.maxBytes)
      return bytes
        ? done(bytes)
        : refused({
            code: 'photo-refused',
            reason: 'too-large',
            detail: `at most ${DEFAULT_PHOTO_LIMITS.maxBytes} bytes`,
          })
    })
  })
}

function aboutOf(header: string | null): Result<unknown, Refusal> {
  try {
    return done(JSON.parse(decodeURIComponent(header ?? '')) as unknown)
  } catch (error) {
    if (error instanceof SyntaxError || error instanceof URIError)
      return refused({ code: 'invalid', fields: { [ABOUT]: ['JSON, percent-encoded'] } })
    throw error
  }
}
