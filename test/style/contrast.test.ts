import { describe, expect, it } from 'vitest'
import { contrastOf } from './contrast-of'
import { AT_LEAST, PAIRS, type Pair, SILENT } from './contrast-pairs'
import { type StyleRule, styleRules, type Theme, themeColours } from './style-rules'

const THEMES: readonly Theme[] = ['day', 'night']
const PAINTS = /^(color|fill|stroke|border(-(top|right|bottom|left))?(-color)?|outline(-color)?|box-shadow)$/
const GROUNDS = /^background(-color)?$/
/** What a hand touches: its edge must be seen. */
const CONTROLS = /\.cell$|\.key$|\.choice label$|\.field (input|select|textarea)|^\.button(\.plain|\.stop)?(,|$)/

function colourIn(value: string): string | null {
  return /var\((--[\w-]+)\)|(#[0-9a-f]{3,8})\b/i.exec(value)?.slice(1).find(Boolean) ?? null
}

/** Colours named by the declarations of a kind, with where. */
function namedIn(rules: readonly StyleRule[], kind: RegExp): { name: string; where: string }[] {
  return rules.flatMap(({ file, selector, declared }) =>
    [...declared].flatMap(([property, value]) => {
      const name = kind.test(property) ? colourIn(value) : null
      return name ? [{ name, where: `${file} ${selector}` }] : []
    }),
  )
}

function figure([, , foreground, background]: Pair, colours: ReadonlyMap<string, string>): number {
  const hex = (name: string) => (name.startsWith('#') ? name : (colours.get(name) ?? `${name} is not a colour`))
  return contrastOf(hex(foreground), hex(background))
}

describe('contrast', () => {
  it('is measured as the guidelines define it', () => {
    expect(contrastOf('#000', '#ffffff')).toBeCloseTo(21, 5)
    expect(contrastOf('#777777', '#fff')).toBeCloseTo(4.478, 3)
    expect(() => contrastOf('#fff8', '#000')).toThrow(RangeError)
  })

  it('of every pair is enough by day and by night', () => {
    const themes = THEMES.map(themeColours)
    const lines = PAIRS.map((pair) => {
      const [use, what, foreground, background] = pair
      const [day = 0, night = 0] = themes.map((colours) => figure(pair, colours))
      return { use, least: AT_LEAST[use], what, foreground, background, day, night }
    })
    const shown = lines.map(
      (line) =>
        `${line.day.toFixed(2).padStart(6)} ${line.night.toFixed(2).padStart(6)}  ${String(line.least).padStart(3)}  ${line.what}: ${line.foreground} on ${line.background}`,
    )
    console.log(`contrast\n   day  night least\n${shown.join('\n')}`)
    expect(lines.filter(({ least, day, night }) => Math.min(day, night) < least)).toEqual([])
  })

  it('is measured for every colour that a stylesheet paints with or on', () => {
    const rules = styleRules()
    const painted = new Set(PAIRS.map(([, , foreground]) => foreground))
    const grounds = new Set(PAIRS.map(([, , , background]) => background))
    // An underlay may show what it is painted with elsewhere: a bar's line, a timer's filling.
    const known = (name: string) => painted.has(name) || SILENT.has(name)
    expect(namedIn(rules, PAINTS).filter(({ name }) => !known(name) && !grounds.has(name))).toEqual([])
    expect(namedIn(rules, GROUNDS).filter(({ name }) => !grounds.has(name) && !known(name))).toEqual([])
    expect(rules.length).toBeGreaterThan(300)
  })

  it('is measured for every rule that sets both colour and background', () => {
    const pairs = new Set(PAIRS.map(([, , foreground, background]) => `${foreground} on ${background}`))
    const both = styleRules().flatMap(({ file, selector, declared }) => {
      const [on, colour] = ['background', 'color'].map((name) => colourIn(declared.get(name) ?? ''))
      return on && colour ? [{ pair: `${colour} on ${on}`, where: `${file} ${selector}` }] : []
    })
    expect(both.filter(({ pair }) => !pairs.has(pair))).toEqual([])
    expect(both.length).toBeGreaterThan(10)
  })

  it('no control has an edge that is silent', () => {
    const controls = styleRules().filter(({ selector }) => CONTROLS.test(selector))
    const edges = namedIn(controls, /^border(-color)?$/)
    expect(edges.filter(({ name }) => SILENT.has(name))).toEqual([])
    expect(edges.length).toBeGreaterThan(4)
  })
})
