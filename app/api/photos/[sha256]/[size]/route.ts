import { openPhoto } from '@/lib/server/commands/open-photo'
import { answer } from '../../../answer'

type Params = { params: Promise<{ sha256: string; size: string }> }

/** A photo by its digest, `original`, `rendition` or `thumb`. Bytes under a digest never change, so the browser may keep them; shared caches may not. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const asked = await params
  return answer(async (actor) => {
    const photo = await openPhoto(actor, asked)
    if (!photo.ok) return photo
    const { bytes, mediaType, digest } = photo.value
    return new Response(new Uint8Array(bytes), {
      headers: {
        'content-type': mediaType,
        'content-length': String(bytes.length),
        'content-disposition': `${asked.size === 'original' ? 'attachment' : 'inline'}; filename="${digest}"`,
        'content-security-policy': "default-src 'none'; sandbox",
        'x-content-type-options': 'nosniff',
        'cache-control': 'private, max-age=31536000, immutable',
        etag: `"${digest}"`,
      },
    })
  })
}
