import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import { DEMO_PASSWORD, demoPerson } from '@/lib/server/demo/demo-people'
import { type BareBrowser, openBareBrowser } from './bare-browser'
import { type BenchBrowser, openBenchBrowser, SLOWDOWN } from './bench-browser'
import { startDemoServer } from './demo-server'
import { firstLoad } from './first-load'
import { KEYED_FORMS, timeBareField, timeForm } from './keyed-forms'
import { kB, keysSaid, spread } from './say-times'
import { startTimes } from './start-time'

const ROUNDS = 6
/** Slowest screen against the bare shell. */
const BOUND = 2.5
const NUMBER = 'MD-0042'
/** A device has several repairs on it; one is opened. */
const PINNED = ['MD-0041', NUMBER, 'MD-0043', 'MD-0044']
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
 * The floor is the same shell where nobody is signed in; the ratio is of the fastest start of the slowest screen. `BENCH_TRACE` names a folder for traces of one start of each.
 */
export async function benchSiteCapture(): Promise<{ name: string; ratio: number; bound: number; lines: string[] }> {
  const profile = mkdtempSync(join(tmpdir(), 'bench-browser-'))
  const server = await startDemoServer()
  try {
    const lines = [`load of the machine ${loadavg()[0]?.toFixed(1)}`]
    await inBrowser(openBenchBrowser(server.url, profile), async (browser) => {
      await pinRepairs(browser)
      lines.push(...(await loadLines(browser)))
    })
    await server.stop()
    const starts = await inBrowser(openBareBrowser(profile), (browser) => timeStarts(browser, server.url))
    lines.push(...starts.lines)
    await inBrowser(openBenchBrowser(server.url, profile), async (browser) => {
      await browser.context.setOffline(true)
      lines.push(`floor of a key, a bare field: ${keysSaid(await timeBareField(browser))}`)
      for (const form of KEYED_FORMS) lines.push(`${form.name}: ${keysSaid(await timeForm(browser, form))}`)
    })
    lines.push(`load of the machine ${loadavg()[0]?.toFixed(1)}; processor slowed ${SLOWDOWN} times`)
    return { name: 'capture screens without a network', ratio: starts.ratio, bound: BOUND, lines }
  } finally {
    await server.remove()
    rmSync(profile, { recursive: true, force: true })
  }
}

async function inBrowser<B extends { close(): Promise<void> }, T>(
  opening: Promise<B>,
  work: (browser: B) => Promise<T>,
) {
  const browser = await opening
  try {
    return await work(browser)
  } finally {
    await browser.close()
  }
}

async function loadLines(browser: BenchBrowser): Promise<string[]> {
  const lines: string[] = []
  for (const [at, path] of ROUTES.entries()) {
    const usable = SCREENS[Math.min(at, SCREENS.length - 1)]?.parts.usable ?? 'main'
    const { namedBytes, allBytes, chunks } = await firstLoad(browser, path, usable)
    lines.push(`${path}: scripts named ${kB(namedBytes)}, all ${kB(allBytes)}, ${chunks.length} chunks`)
    if (process.env.BENCH_CHUNKS)
      for (const one of chunks) lines.push(`    ${kB(one.bytes)} ${one.isNamed ? 'named' : 'asked for'} ${one.name}`)
  }
  return lines
}

/** Start every screen, the floor among them, round after round. */
async function timeStarts(browser: BareBrowser, url: string): Promise<{ ratio: number; lines: string[] }> {
  const floors: number[] = []
  const words: number[] = []
  const times = SCREENS.map(({ parts }) => Object.keys(parts).map(() => [] as number[]))
  for (let round = 0; round < ROUNDS; round += 1) {
    floors.push(await floorMs(browser, url))
    for (const [at, { name, path, parts }] of SCREENS.entries()) {
      const isTraced = process.env.BENCH_TRACE !== undefined && round === ROUNDS - 1
      const keep = (events: unknown[]) => {
        const folder = process.env.BENCH_TRACE ?? '.'
        mkdirSync(folder, { recursive: true })
        writeFileSync(join(folder, `start of ${name}.json`), JSON.stringify(events))
      }
      const taken = await startTimes(browser, `${url}${path}`, parts, isTraced ? keep : undefined)
      if (isTraced) continue
      words.push(taken.words ?? Number.NaN)
      for (const [place, part] of Object.keys(parts).entries()) times[at]?.[place]?.push(taken[part] ?? Number.NaN)
    }
  }
  const floor = Math.min(...floors)
  const lines = [
    `the browser alone, to the first words of the shell: ${spread(words)}`,
    `floor, the shell with nobody: ${spread(floors)}`,
  ]
  for (const [at, { name, parts }] of SCREENS.entries())
    for (const [place, part] of Object.keys(parts).entries()) {
      const taken = times[at]?.[place] ?? []
      lines.push(`${name} ${part}: ${spread(taken)}; ratio ${(Math.min(...taken) / floor).toFixed(2)}`)
    }
  const slowest = Math.max(...times.map((parts) => Math.min(...(parts[0] ?? []))))
  return { ratio: slowest / floor, lines }
}

/** Sign in, take repairs along, and wait until the shell lies on the device. */
async function pinRepairs(browser: BenchBrowser): Promise<void> {
  const { page } = await browser.coldPage(1)
  await page.goto('/sign-in')
  await page.getByLabel(/e-?mail/i).fill(demoPerson('tobias-wrenfield').email)
  await page.getByLabel(/password/i).fill(DEMO_PASSWORD)
  await page.getByRole('button', { name: /sign in/i }).click()
  await page.waitForURL('**/waiting')
  for (const number of PINNED) {
    await page.goto(`/repairs/${number}`)
    await page.getByRole('button', { name: 'Take to site' }).click()
    await page.getByRole('link', { name: /^On this device/ }).waitFor({ timeout: 60_000 })
  }
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
async function floorMs(browser: BareBrowser, url: string): Promise<number> {
  const page = await browser.coldPage(1)
  await page.goto(`${url}/site#show=outbox`)
  await new Promise((settle) => setTimeout(settle, 2000))
  const owner = await page.read(swapOwner('null'))
  const { usable } = await startTimes(browser, `${url}/site`, { usable: 'a.button[href="/sign-in"]' })
  await page.read(swapOwner(JSON.stringify(owner)))
  await page.close()
  return usable ?? Number.NaN
}

/** Text that puts another owner, or none, in the place of the one that works here; its value is who it was. */
function swapOwner(next: string): string {
  return `new Promise((settle, fail) => {
    const asked = indexedDB.open('underwrap-site')
    asked.onerror = () => fail(asked.error)
    asked.onsuccess = () => {
      const notes = asked.result.transaction('notes', 'readwrite').objectStore('notes')
      const found = notes.get('owner')
      const next = ${next}
      found.onsuccess = () => {
        if (next) notes.put(next, 'owner')
        else notes.delete('owner')
      }
      notes.transaction.oncomplete = () => {
        asked.result.close()
        settle(found.result)
      }
    }
  })`
}
