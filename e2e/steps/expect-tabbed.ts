import { expect, type Page } from '@playwright/test'

const STOPS_MOST = 400
/** Narrowest and lowest that a target for a gloved thumb may be, in CSS pixels. */
const TARGET_PX = 48

declare global {
  interface Window {
    tabbed: {
      /** Controls that Tab must reach now, in the document's order: of a group of radios the one that Tab enters. */
      stops(): HTMLElement[]
      nameOf(node: Element): string
      /** Outline and shadow of a control, or of the label that shows it. */
      lookOf(node: Element): string
      rest: Map<Element, string>
      seen: Set<Element>
      nextOf(at: Element | null): string | null
    }
  }
}

/**
 * Walk through the open screen by Tab alone. Every control of its main part is reached, in the document's order and with a focus that is seen, and nothing holds the focus; one Shift+Tab goes back.
 * What a control opens as it takes the focus is walked through too. @returns how many stops there were
 */
export async function expectTabbed(page: Page, screen: string): Promise<number> {
  let expected = await page.evaluate(prepareWalk)
  const faults: string[] = []
  let stops = 0
  for (; stops < STOPS_MOST && expected !== null && faults.length < 6; stops += 1) {
    let arrived = await tabOnce(page)
    // a day or a time has parts of its own, each a stop
    for (let parts = 0; parts < 8 && arrived.isStill; parts += 1) arrived = await tabOnce(page)
    if (arrived.name !== expected) faults.push(`after stop ${stops}: ${arrived.name} instead of ${expected}`)
    if (!arrived.isSeen) faults.push(`no focus is seen on ${arrived.name}`)
    expected = arrived.next
  }
  const missed = await page.evaluate(() =>
    window.tabbed
      .stops()
      .filter((node) => !window.tabbed.seen.has(node))
      .map(window.tabbed.nameOf),
  )
  expect.soft([...faults, ...missed.map((name) => `never reached: ${name}`)], screen).toEqual([])
  expect(stops, `${screen}: stops`).toBeLessThan(STOPS_MOST)
  return stops
}

/** Every target of the main part is large enough for a gloved thumb. Links within a sentence are read, not aimed at, and stand aside. */
export async function expectLargeTargets(page: Page, screen: string): Promise<void> {
  const small = await page.evaluate((least) => {
    const targets = [...document.querySelectorAll<HTMLElement>('main button, main select, main textarea, main summary')]
    const fields = [...document.querySelectorAll<HTMLInputElement>('main input')].map((input) =>
      /^(radio|checkbox)$/.test(input.type) || input.className.includes('visually-hidden')
        ? (input.labels?.[0] ?? input)
        : input,
    )
    const links = [...document.querySelectorAll<HTMLElement>('main a[href]')].filter(
      (link) =>
        !/^(P|SPAN|LI|TD|EM|STRONG)$/.test(link.parentElement?.tagName ?? '') || link.className.includes('button'),
    )
    return [...targets, ...fields, ...links].flatMap((node) => {
      const { width, height } = node.getBoundingClientRect()
      const isShown = node.checkVisibility() && width > 0
      // a fraction of a pixel is lost to the layout of a grid
      return isShown && Math.min(width, height) < least - 0.5
        ? [
            `${Math.round(width)} x ${Math.round(height)}: ${(node.getAttribute('aria-label') ?? node.textContent ?? '').slice(0, 50)} <${node.tagName.toLowerCase()}>`,
          ]
        : []
    })
  }, TARGET_PX)
  expect.soft(small, `${screen}: targets under ${TARGET_PX} px`).toEqual([])
}

function prepareWalk(): string | null {
  const stops = () => {
    const all = [
      ...document.querySelectorAll<HTMLElement>(
        'main :is(a[href], button, input, select, textarea, summary, [tabindex])',
      ),
    ].filter(
      (node) => node.tabIndex >= 0 && !node.matches(':disabled') && node.checkVisibility({ visibilityProperty: true }),
    )
    return all.filter((node) => {
      if (!(node instanceof HTMLInputElement) || node.type !== 'radio') return true
      const group = all.filter(
        (other) => other instanceof HTMLInputElement && other.type === 'radio' && other.name === node.name,
      )
      return (group.find((one) => (one as HTMLInputElement).checked) ?? group[0]) === node
    })
  }
  const nameOf = (node: Element) =>
    `${node.tagName.toLowerCase()} ${node.getAttribute('aria-label') ?? (node as HTMLInputElement).labels?.[0]?.textContent ?? node.textContent ?? ''}`.slice(
      0,
      90,
    )
  const lookOf = (node: Element) =>
    [node, node.closest('label')]
      .filter((one) => one !== null)
      .map((one) => {
        const { outlineStyle, outlineWidth, outlineColor, boxShadow } = getComputedStyle(one)
        return `${outlineStyle === 'none' ? '' : `${outlineStyle} ${outlineWidth} ${outlineColor}`} ${boxShadow}`
      })
      .join(' / ')
  const active = document.activeElement
  if (active instanceof HTMLElement) active.blur()
  const rest = new Map<Element, string>()
  const nextOf = (at: Element | null) => {
    const all = stops()
    for (const node of all) if (!rest.has(node)) rest.set(node, lookOf(node))
    const next = at ? all[all.indexOf(at as HTMLElement) + 1] : all[0]
    return next ? nameOf(next) : null
  }
  window.tabbed = { stops, nameOf, lookOf, rest, nextOf, seen: new Set() }
  // the walk starts at the main part: the bar over it is the same on every screen
  const main = document.querySelector<HTMLElement>('main')
  main?.setAttribute('tabindex', '-1')
  main?.focus()
  main?.removeAttribute('tabindex')
  return nextOf(null)
}

type Arrived = { name: string; isSeen: boolean; isStill: boolean; next: string | null }

async function tabOnce(page: Page): Promise<Arrived> {
  await page.keyboard.press('Tab')
  return page.evaluate(() => {
    const { nameOf, nextOf, lookOf, rest, seen } = window.tabbed
    const at = document.activeElement ?? document.body
    const isStill = seen.has(at) && at.matches('input[type=date], input[type=time]')
    const before = rest.get(at)
    const isSeen = isStill || before === undefined || before !== lookOf(at)
    seen.add(at)
    return { name: nameOf(at), isSeen, isStill, next: nextOf(at) }
  })
}
