import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { styleRules } from './style-rules'

/** What may change under a pointer: how a thing looks, never whether it is there. */
const LOOKS = /^(color|background|background-color|border-color|text-decoration|text-decoration-thickness)$/

it('nothing is on hover only: a glove has no hover', () => {
  const hovered = styleRules().filter(({ selector }) => selector.includes(':hover'))
  const shown = hovered.flatMap(({ file, selector, declared }) =>
    [...declared.keys()]
      .filter((property) => !LOOKS.test(property))
      .map((property) => `${file} ${selector} ${property}`),
  )
  expect(shown).toEqual([])
  expect(hovered.length).toBeGreaterThan(3)
  const files = readdirSync('app', { recursive: true, encoding: 'utf8' }).filter((path) => path.endsWith('.tsx'))
  const listening = files.filter((path) =>
    /onMouse(Enter|Over|Leave)|onPointer(Enter|Over|Leave)/.test(readFileSync(join('app', path), 'utf8')),
  )
  expect(listening).toEqual([])
  expect(files.length).toBeGreaterThan(100)
})

it('what a finger taps is never zoomed by a second tap', () => {
  const tapped = styleRules().filter(({ declared }) => declared.get('touch-action') === 'manipulation')
  const selectors = tapped.flatMap(({ selector }) => selector.split(', '))
  for (const tag of ['a', 'button', 'input', 'label', 'select', 'summary', 'textarea']) expect(selectors).toContain(tag)
})
