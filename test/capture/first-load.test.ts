import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { describe, expect, test } from 'vitest'

const BUILT = '.next'
/** Compressed scripts that a capture page names before it asks for the program of its screen. */
const AT_MOST_BYTES = 200_000
const ROUTES = ['site/page', '(work)/repairs/[number]/points/[point]/record/[type]/page'] as const

/** Every script that the page of a route names, of the framework, and of its layouts and of the page by whose they are. */
function scriptsBy(route: string): { framework: string[]; of: Record<string, string[]> } {
  const root = JSON.parse(readFileSync(join(BUILT, 'build-manifest.json'), 'utf8')) as { rootMainFiles: string[] }
  const text = readFileSync(join(BUILT, 'server/app', `${route}_client-reference-manifest.js`), 'utf8')
  const manifest = JSON.parse(text.slice(text.indexOf('] = ') + 4).replace(/;\s*$/, '')) as {
    entryJSFiles: Record<string, string[]>
  }
  return { framework: root.rootMainFiles, of: manifest.entryJSFiles }
}

function namedScripts(route: string): string[] {
  const { framework, of } = scriptsBy(route)
  return [...new Set([...framework, ...Object.values(of).flat()])]
}

function compressedBytes(script: string): number {
  return gzipSync(readFileSync(join(BUILT, script))).length
}

describe('scripts of the first load of capture', () => {
  for (const route of ROUTES)
    test(route, ({ skip }) => {
      if (!existsSync(join(BUILT, 'BUILD_ID'))) skip('the built app')
      const scripts = namedScripts(route)
      // a manifest that is read wrongly lacks one of these
      const { framework, of } = scriptsBy(route)
      expect(framework.length).toBeGreaterThan(3)
      expect(of['[project]/app/layout']?.length).toBeGreaterThan(0)
      const own = of[`[project]/app/${route}`] ?? []
      expect(own.filter((script) => !framework.includes(script)).length).toBeGreaterThan(1)
      expect(Math.max(...own.map(compressedBytes))).toBeGreaterThan(20_000)
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
