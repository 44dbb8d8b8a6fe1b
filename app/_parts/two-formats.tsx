import { PictureSvg } from '@/app/_ui/picture-svg'
import type { Picture, PictureFormat } from '@/lib/domain/pictures/picture'

/** A picture drawn twice, wide for a desk and narrow for a phone: the style sheet shows one of them, so that its letters stay legible. */
export function TwoFormats({
  draw,
  markHref,
}: {
  draw: (format: PictureFormat) => Picture
  markHref?: ((mark: string) => string) | undefined
}) {
  return (
    <>
      <div className="picture-wide">
        <PictureSvg picture={draw('wide')} {...(markHref ? { markHref } : {})} />
      </div>
      <div className="picture-narrow">
        <PictureSvg picture={draw('narrow')} {...(markHref ? { markHref } : {})} />
      </div>
    </>
  )
}
