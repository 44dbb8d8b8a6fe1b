import { createElement } from 'react'
import type { Picture } from '@/lib/domain/pictures/picture'
import { svgElementsOf } from '@/lib/domain/pictures/picture-svg'

/** A picture as SVG. Its description is read to who cannot see it. `markHref` makes its marks links. */
export function PictureSvg({ picture, markHref }: { picture: Picture; markHref?: (mark: string) => string }) {
  return (
    <svg
      className="picture"
      viewBox={`0 0 ${picture.widthPx} ${picture.heightPx}`}
      // a picture with links in it is a group: within an image a screen reader finds nothing to follow
      role={markHref ? 'group' : 'img'}
      aria-label={`${picture.title}. ${picture.description}`}
    >
      {svgElementsOf(picture).map((element, place) => {
        const node = createElement(element.tag, { className: element.className, ...element.attributes }, element.text)
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: the shapes of a picture have no identity but their place in painting order
          <g key={place}>
            {element.mark && markHref ? (
              <a
                href={markHref(element.mark)}
                aria-label={`Mark ${element.mark}${element.text ? `: ${element.text}` : ''}`}
              >
                {node}
              </a>
            ) : (
              node
            )}
          </g>
        )
      })}
    </svg>
  )
}
