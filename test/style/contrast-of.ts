/** Colour as red, green, blue from 0 to 255. */
type Colour = readonly [number, number, number]

/** Contrast of two opaque colours, 1 to 21, as the Web Content Accessibility Guidelines 2.2 define it. @throws RangeError when a colour is not `#rgb` or `#rrggbb` */
export function contrastOf(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(colourOf(one)), luminance(colourOf(other))].sort((a, b) => a - b)
  return (light + 0.05) / (dark + 0.05)
}

function colourOf(text: string): Colour {
  const short = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/i.exec(text)
  const digits = short ? short.slice(1).map((one) => one + one) : /^#(..)(..)(..)$/.exec(text)?.slice(1)
  const [red, green, blue] = (digits ?? []).map((pair) => Number.parseInt(pair, 16))
  if (red === undefined || green === undefined || blue === undefined || Number.isNaN(red + green + blue))
    throw new RangeError(`not an opaque colour: ${text}`)
  return [red, green, blue]
}

function luminance(colour: Colour): number {
  const [red = 0, green = 0, blue = 0] = colour.map((part) => {
    const share = part / 255
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}
