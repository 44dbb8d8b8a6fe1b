import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { describe, expect, test } from 'vitest'

const BUILT = '.next'
/** Compressed scripts that a capture page names before it asks for the program of its screen. */
const AT_MOST_BYTES = 200_000
const ROUTES = ['site/page', '(work)/repairs/[number]/points/[point]/record/[type]/page'] as const

/** Every script that the page of a route names: of the framework, of its layouts and of the page. */
function namedScripts(route: string): string[] {
  const root = JSON.parse(readFileSync(join(BUILT, 'build-manifest.json'), 'utf8')) as { rootMainFiles: string[] }
  const text = readFileSync(join(BUILT, 'server/app', `${route}_client-reference-manifest.js`), 'utf8')
  const manifest = JSON.parse(text.slice(text.indexOf('] = ') + 4).replace(/;\s*$/, '')) as {
    entryJSFiles: Record<string, string[]>
  }
  return [...new Set([...root.rootMainFiles, ...Object.values(manifest.entryJSFiles).flat()])]
}

function compressedBytes(script: string): number {
  return gzipSync(readFileSync(join(BUILT, script))).length
}

describe('scripts of the first load of capture', () => {
  for (const route of ROUTES)
    test(route, ({ skip }) => {
      if (!existsSync(join(BUILT, 'BUILD_ID'))) skip('the built app')
      const scripts = namedScripts(route)
      // the framework, a layout and the page at the least: a manifest that is read wrongly names fewer
      expect(scripts.length).toBeGreaterThan(4)
      const weighed = scripts.map((script) => [compressedBytes(script), script] as const).sort((a, b) => b[0] - a[0])
      const bytes = weighed.reduce((sum, [own]) => sum + own, 0)
      expect(bytes, JSON.stringify(weighed, null, 1)).toBeLessThan(AT_MOST_BYTES)
    })

  test('the page as served names those scripts and no other', ({ skip }) => {
    if (!existsSync(join(BUILT, 'BUILD_ID'))) skip('the built app')
    const page = readFileSync(join(BUILT, 'server/app/site.html'), 'utf8')
    const inPage = [...page.matchAll(/<script src="\/_next\/(static\/chunks\/[^"]+\.js)"([^>]*)>/g)]
      .filter(([, , how]) => !/nomodule/i.test(how ?? ''))
      .map(([, script]) => script ?? '')
    expect([...new Set(inPage)].sort()).toEqual(namedScripts('site/page').sort())
  })
})
