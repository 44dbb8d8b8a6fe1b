import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'

const FOLDER = resolve('../shared/photos')

/** Whether the real photographs are at hand; tests that need them skip otherwise, and say so here once. */
export const hasSharedPhotos = existsSync(FOLDER)
if (!hasSharedPhotos) console.warn(`Skipped: no real photographs at ${FOLDER}`)

/** Names of all files in the folder of real photographs. */
export function listSharedPhotos(): string[] {
  return hasSharedPhotos ? readdirSync(FOLDER).sort() : []
}

/** Bytes of one real photograph. */
export function readSharedPhoto(name: string): Buffer {
  return readFileSync(join(FOLDER, name))
}
