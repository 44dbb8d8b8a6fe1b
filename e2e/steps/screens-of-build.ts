import { readFileSync } from 'node:fs'
import { join } from 'node:path'

/** Screens that no address opens: shown by the framework alone, when the server itself fails. */
const NOT_OPENED = new Set(['/_global-error'])

/** Routes of the screens of the built app, in its own words: `/repairs/[number]`. Files and actions are no screens. @throws Error when there is no build */
export function screensOfBuild(): string[] {
  const manifest = JSON.parse(readFileSync(join('.next', 'app-path-routes-manifest.json'), 'utf8')) as Record<
    string,
    string
  >
  return Object.entries(manifest)
    .filter(([written, route]) => written.endsWith('/page') && !NOT_OPENED.has(route))
    .map(([, route]) => route)
    .sort()
}

/** Whether an address is one of a route: `/repairs/MD-0042?x=1` of `/repairs/[number]`. */
export function isOfRoute(address: string, route: string): boolean {
  const path = address.replace(/[?#].*$/, '')
  const parts = route.split('/').map((part) => (part.startsWith('[') ? '[^/]+' : part.replaceAll('.', '\\.')))
  return new RegExp(`^${parts.join('/')}$`).test(path)
}
