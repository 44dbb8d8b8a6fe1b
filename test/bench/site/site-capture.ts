import { loadavg } from 'node:os'
import type { Page } from '@playwright/test'
import { DEMO_PASSWORD, demoPerson } from '@/lib/server/demo/demo-people'
import { type BenchBrowser, openBenchBrowser, SLOWDOWN } from './bench-browser'
import { startDemoServer } from './demo-server'
import { firstLoad } from './first-load'
import { KEYED_FORMS, timeBareField, timeForm } from './keyed-forms'
import type { Keystroke } from './keystroke-times'
import { startTimes } from './start-time'

const ROUNDS = 5
/** Slowest screen against the bare shell. */
const BOUND = 4
const NUMBER = 'MD-0042'
const FORM = 'point=16&attempt=3&form=hardness'

const ROUTES = [
  '/site',
  `/site#repair=${NUMBER}`,
  `/site#repair=${NUMBER}&point=16`,
  `/site#repair=${NUMBER}&${FORM}`,
  `/repairs/${NUMBER}/points/16/record/hardness?attempt=3`,
] as const

const SCREENS: readonly { name: string; path: string; parts: Record<string, string> }[] = [
  { name: 'list of repairs', path: ROUTES[0], parts: { usable: '.site-waits li' } },
  { name: 'ladder', path: ROUTES[1], parts: { usable: 'ol.ladder li' } },
  { name: 'point', path: ROUTES[2], parts: { usable: 'ul.live' } },
  {
    name: 'form',
    path: ROUTES[3],
    parts: { usable: 'form.form .save-dock button', verdicts: 'form.form ul.live' },
  },
]

/**
 * Measure the screens for work without a network on a processor slowed four times: scripts of a first load, time to a usable screen with the server gone, and keys to the shown verdict.
 * The floor is the same shell where nobody is signed in; the ratio is of the fastest start of the slowest screen.
 */
export async function benchSiteCapture(): Promise<{ name: string; ratio: number; bound: number; lines: string[] }> {
  const server = await startDemoServer()
  const browser = await openBenchBrowser(server.url)
  try {
    await pinRepair(browser)
    const lines = [`load of the machine ${loadavg()[0]?.toFixed(1)}`]
    for (const [at, path] of ROUTES.entries()) {
      const usable = SCREENS[Math.min(at, SCREENS.length - 1)]?.parts.usable ?? 'main'
      const { namedBytes, allBytes, chunks } = await firstLoad(browser, path, usable)
      lines.push(`${path}: scripts named ${kB(namedBytes)}, all ${kB(allBytes)}, ${chunks.length} chunks`)
      if (process.env.BENCH_CHUNKS)
        for (const one of chunks) lines.push(`    ${kB(one.bytes)} ${one.isNamed ? 'named' : 'asked for'} ${one.name}`)
    }
    await server.stop()
    await browser.context.setOffline(true)
    const floors: number[] = []
    const words: number[] = []
    const times = SCREENS.map(({ parts }) => Object.keys(parts).map(() => [] as number[]))
    for (let round = 0; round < ROUNDS; round += 1) {
      floors.push(await floorMs(browser))
      for (const [at, { path, parts }] of SCREENS.entries()) {
        const taken = await startTimes(browser, path, parts)
        words.push(taken.words ?? Number.NaN)
        for (const [place, part] of Object.keys(parts).entries()) times[at]?.[place]?.push(taken[part] ?? Number.NaN)
      }
    }
    const floor = Math.min(...floors)
    lines.push(`the browser alone, to the first words of the shell: ${spread(words)}`)
    lines.push(`floor, the shell with nobody: ${spread(floors)}`)
    for (const [at, { name, parts }] of SCREENS.entries())
      for (const [place, part] of Object.keys(parts).entries()) {
        const taken = times[at]?.[place] ?? []
        lines.push(`${name} ${part}: ${spread(taken)}; ratio ${(Math.min(...taken) / floor).toFixed(2)}`)
      }
    lines.push(`floor of a key, a bare field: ${keysSaid(await timeBareField(browser))}`)
    for (const form of KEYED_FORMS) lines.push(`${form.name}: ${keysSaid(await timeForm(browser, form))}`)
    lines.push(`load of the machine ${loadavg()[0]?.toFixed(1)}; processor slowed ${SLOWDOWN} times`)
    const slowest = Math.max(...times.map((parts) => Math.min(...(parts[0] ?? []))))
    return { name: 'capture screens without a network', ratio: slowest / floor, bound: BOUND, lines }
  } finally {
    await browser.close()
    await server.remove()
  }
}

/** Sign in, take the repair along, and wait until the shell lies on the device. */
async function pinRepair(browser: BenchBrowser): Promise<void> {
  const { page } = await browser.coldPage(1)
  await page.goto('/sign-in')
  await page.getByLabel(/e-?mail/i).fill(demoPerson('tobias-wrenfield').email)
  await page.getByLabel(/password/i).fill(DEMO_PASSWORD)
  await page.getByRole('button', { name: /sign in/i }).click()
  await page.waitForURL('**/waiting')
  await page.goto(`/repairs/${NUMBER}`)
  await page.getByRole('button', { name: 'Take to site' }).click()
  await page.getByRole('link', { name: /^On this device/ }).waitFor({ timeout: 60_000 })
  const isKept = () =>
    page.evaluate(
      async () =>
        (await navigator.serviceWorker.getRegistration())?.active?.state === 'activated' &&
        (await caches.match('/site', { ignoreSearch: true })) !== undefined,
    )
  for (let tries = 0; !(await isKept()); tries += 1) {
    if (tries > 600) throw new Error('the shell was not kept on the device')
    await page.waitForTimeout(100)
  }
  await page.close()
}

/** The shell where nobody is signed in; who was is put back. */
async function floorMs(browser: BenchBrowser): Promise<number> {
  const { page } = await browser.coldPage(1)
  await page.goto('/site#show=outbox')
  const owner = await swapOwner(page, null)
  const { usable } = await startTimes(browser, '/site', { usable: 'a.button[href="/sign-in"]' })
  await swapOwner(page, owner)
  await page.close()
  return usable ?? Number.NaN
}

/** Put another owner, or none, in the place of the one that works here; tells who it was. */
function swapOwner(page: Page, next: unknown): Promise<unknown> {
  return page.evaluate(
    (owner) =>
      new Promise<unknown>((settle, fail) => {
        const asked = indexedDB.open('underwrap-site')
        asked.onerror = () => fail(asked.error)
        asked.onsuccess = () => {
          const notes = asked.result.transaction('notes', 'readwrite').objectStore('notes')
          const found = notes.get('owner')
          found.onsuccess = () => {
            if (owner) notes.put(owner, 'owner')
            else notes.delete('owner')
          }
          notes.transaction.oncomplete = () => {
            asked.result.close()
            settle(found.result)
          }
        }
      }),
    next,
  )
}

function keysSaid(keys: readonly Keystroke[]): string {
  const verdicts = keys.flatMap(({ verdictMs }) => (verdictMs !== null && verdictMs > 0 ? [verdictMs] : []))
  const paints = keys.flatMap(({ paintMs }) => (paintMs === null ? [] : [paintMs]))
  const said = (taken: readonly number[]) =>
    taken.length === 0
      ? 'none'
      : `median ${median(taken).toFixed(0)}, 95th ${at(taken, 0.95).toFixed(0)}, worst ${Math.max(...taken).toFixed(0)} ms of ${taken.length}`
  return `${keys.length} keys; to the changed verdict ${said(verdicts)}; to the next paint ${said(paints)}`
}

function spread(taken: readonly number[]): string {
  return `least ${Math.min(...taken).toFixed(0)}, median ${median(taken).toFixed(0)} ms`
}

function median(taken: readonly number[]): number {
  return at(taken, 0.5)
}

function at(taken: readonly number[], share: number): number {
  const sorted = [...taken].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN
}

function kB(bytes: number): string {
  return `${(bytes / 1000).toFixed(1)} kB`
}
