import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { dirname, join, posix } from 'node:path'
import { fileURLToPath } from 'node:url'

export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..')

export type SourceFile = { path: string; text: string; lines: number; imports: string[]; statics: string[] }

/** Every file that the repository keeps or would keep. */
export function listFiles(): string[] {
  const text = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], {
    cwd: ROOT,
    encoding: 'utf8',
  })
  return text.split('\n').filter((path) => path !== '' && existsSync(join(ROOT, path)))
}

/** TypeScript sources with the rooms that they import from, type-only imports included. */
export function readSources(): SourceFile[] {
  return listFiles()
    .filter((path) => /\.(ts|tsx|mjs)$/.test(path))
    .map((path) => {
      const text = readFileSync(join(ROOT, path), 'utf8')
      return {
        path,
        text,
        lines: text.split('\n').length - 1,
        imports: importsOf(path, text),
        statics: importsOf(path, text.replaceAll(/\bimport\(/g, 'load(')),
      }
    })
}

function importsOf(path: string, text: string): string[] {
  const found = [
    ...text.matchAll(
      /(?:^|\n)\s*(?:import|export)\s[^'"]*?from\s*['"]([^'"]+)['"]|(?:^|\n)\s*import\s*['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]\s*\)/g,
    ),
  ]
  return found.map((match) => resolve(path, match[1] ?? match[2] ?? match[3] ?? ''))
}

/** A path from the root for the project's own files; a package's name stays as it is. */
function resolve(path: string, specifier: string): string {
  if (specifier.startsWith('@/')) return specifier.slice(2)
  if (specifier.startsWith('.')) return posix.normalize(posix.join(posix.dirname(path), specifier))
  return `package:${specifier}`
}
