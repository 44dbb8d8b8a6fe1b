import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'

/**
 * Where a file or folder of this installation lies, looked for from the working folder upwards. What the machine holds is found when it runs: the build must not trace it.
 * @throws Error when it is nowhere
 */
export function installedFile(...path: readonly string[]): string {
  const from = /*turbopackIgnore: true*/ process.cwd()
  for (let folder = from; ; folder = dirname(folder)) {
    const candidate = join(/*turbopackIgnore: true*/ folder, ...path)
    if (existsSync(/*turbopackIgnore: true*/ candidate)) return candidate
    if (folder === dirname(folder))
      throw new Error(`A part of the dossier is not installed: no ${path.join('/')} from ${from} upwards`)
  }
}
