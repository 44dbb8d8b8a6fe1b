import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

const SERVER = join('.next', 'server')

/** Whether there is a built app to read. */
export function isBuilt(): boolean {
  return (
    existsSync(join(SERVER, 'server-reference-manifest.json')) && existsSync(join(SERVER, 'app-paths-manifest.json'))
  )
}

/** Names of the server actions of the built app: as exported, or `leave` style names of the file's own for those written inside a page. */
export function builtActions(): string[] {
  const manifest = JSON.parse(readFileSync(join(SERVER, 'server-reference-manifest.json'), 'utf8')) as {
    node: Record<string, { exportedName?: string; filename?: string }>
  }
  return Object.values(manifest.node).map(({ exportedName, filename }) =>
    exportedName?.startsWith('$$') || !exportedName ? `inside ${filename ?? 'a page'}` : exportedName,
  )
}

/** Paths of the built app's pages and routes, without the groups: `/api/jobs/[key]`. */
export function builtPaths(kind: 'route' | 'page'): string[] {
  const manifest = JSON.parse(readFileSync(join(SERVER, 'app-paths-manifest.json'), 'utf8')) as Record<string, string>
  return Object.keys(manifest)
    .filter((path) => path.endsWith(`/${kind}`))
    .map(plainPath)
}

/** Exported actions of every file of actions under app. */
export function writtenActions(): string[] {
  return filesUnder('app')
    .filter((path) => /^['"]use server['"]/.test(readFileSync(path, 'utf8')))
    .flatMap((path) =>
      [...readFileSync(path, 'utf8').matchAll(/^export async function (\w+)/gm)].map((found) => found[1] ?? ''),
    )
}

/** Files with an action written inside a page or layout. */
export function filesWithInnerActions(): string[] {
  return filesUnder('app').filter((path) => /^\s+['"]use server['"]/m.test(readFileSync(path, 'utf8')))
}

/** Paths of pages or routes as written under app. */
export function writtenPaths(kind: 'route' | 'page'): string[] {
  return filesUnder('app')
    .filter((path) => new RegExp(`(^|/)${kind}\\.tsx?$`).test(path))
    .map((path) => plainPath(path.replace(/^app/, '').replace(/\.tsx?$/, '')))
}

function plainPath(path: string): string {
  return path.replace(/\/(route|page)$/, '').replaceAll(/\/\([^)]+\)/g, '') || '/'
}

function filesUnder(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
}
