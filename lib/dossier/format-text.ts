import { existsSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'

// What the machine holds is found when it runs: the build must not trace it, hence the marks below.
let loaded: Promise<Uint8Array> | null = null

/**
 * The text that says what a record is made of, byte by byte, as every sealed dossier carries it; from the working folder upwards, read once in a process.
 * @throws Error when it is not there
 */
export function loadFormatText(): Promise<Uint8Array> {
  loaded ??= readFormat().catch((error: unknown) => {
    loaded = null
    throw error
  })
  return loaded
}

async function readFormat(): Promise<Uint8Array> {
  for (let folder = /*turbopackIgnore: true*/ process.cwd(); ; folder = dirname(folder)) {
    const candidate = join(/*turbopackIgnore: true*/ folder, 'lib', 'evidence', 'FORMAT.md')
    if (existsSync(/*turbopackIgnore: true*/ candidate)) return readFile(/*turbopackIgnore: true*/ candidate)
    if (folder === dirname(folder))
      throw new Error('The description of the record is not installed: lib/evidence/FORMAT.md')
  }
}
