import { readFile } from 'node:fs/promises'
import { installedFile } from './installed-file'

let loaded: Promise<Uint8Array> | null = null

/**
 * The text that says what a record is made of, byte by byte, as every sealed dossier carries it; read once in a process.
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
  return readFile(/*turbopackIgnore: true*/ installedFile('lib', 'evidence', 'FORMAT.md'))
}
