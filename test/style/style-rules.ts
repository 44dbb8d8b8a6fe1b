import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

export type StyleRule = { file: string; selector: string; declared: ReadonlyMap<string, string> }
export type Theme = 'day' | 'night'

/** Every rule of the app's stylesheets, those inside a media query too, print aside. */
export function styleRules(): StyleRule[] {
  return readdirSync('app', { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.css'))
    .sort()
    .flatMap((file) => rulesIn(file, readFileSync(join('app', file), 'utf8')))
}

/** The colours of a theme by their names, `--ink` to `#14181b`; the night's stand over the day's. */
export function themeColours(theme: Theme): Map<string, string> {
  const colours = new Map<string, string>()
  for (const { selector, declared } of styleRules())
    if (selector === ':root' || (theme === 'night' && selector === ':root[data-theme="night"]'))
      for (const [name, value] of declared) if (value.startsWith('#')) colours.set(name, value)
  return colours
}

function rulesIn(file: string, text: string): StyleRule[] {
  const plain = text
    .replaceAll(/\/\*[\s\S]*?\*\//g, '')
    .replaceAll(/@media print\s*\{(?:[^{}]*\{[^{}]*\})*[^{}]*\}/g, '')
  return [...plain.matchAll(/([^{}]+)\{([^{}]*)\}/g)].map(([, selector = '', body = '']) => ({
    file,
    selector: selector.trim().replaceAll(/\s+/g, ' '),
    declared: new Map(
      body
        .split(';')
        .map((line) => /^\s*([\w-]+)\s*:\s*([\s\S]+?)\s*$/.exec(line))
        .flatMap((found) => (found?.[1] && found[2] ? [[found[1], found[2]] as const] : [])),
    ),
  }))
}
