import { readdir, stat } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { sha256Of, sha256OfFile } from '@/lib/evidence/sha256'
import { isSha256Hex, type PhotoStore } from '@/lib/photo/photo-store'
import type { CitedObject } from './objects-of'
import type { Tally } from './tally'

/** Check every object that a fact cites: it is stored, of the size said, and its bytes give its name. What a person disposed of may be gone. */
export async function checkObjects(
  photos: PhotoStore,
  cited: ReadonlyMap<string, CitedObject>,
  disposed: ReadonlySet<string>,
  tally: Tally,
): Promise<void> {
  for (const { sha256, sizeBytes, what, mustBeStored } of cited.values()) {
    const place = `${what}, object ${sha256}`
    const found = await readObject(photos, sha256)
    if (found === null) {
      if (mustBeStored && !disposed.has(sha256))
        tally.fail({ place, problem: 'it is missing', remedy: 'Put the file back from a backup.' })
      else tally.pass()
    } else if (found.sha256 !== sha256)
      tally.fail({ place, problem: 'its bytes were changed', remedy: 'Put the file back from a backup.' })
    else if (sizeBytes !== null && found.sizeBytes !== sizeBytes)
      tally.fail({
        place,
        problem: `the fact says ${sizeBytes} bytes`,
        remedy: 'A fact states it wrongly: correct it.',
      })
    else tally.pass()
  }
}

async function readObject(photos: PhotoStore, sha256: string): Promise<{ sha256: string; sizeBytes: number } | null> {
  if (photos.path) {
    const path = photos.path(sha256)
    const found = await stat(path).catch(nullWhenAbsent)
    return found?.isFile() ? { sha256: await sha256OfFile(path), sizeBytes: found.size } : null
  }
  const bytes = await photos.read(sha256)
  return bytes && { sha256: sha256Of(bytes), sizeBytes: bytes.length }
}

/** Tell what lies in a photo folder that no fact cites: left by a work that was cut short, and no break. Other stores are not listed. */
export async function noteUnused(photos: PhotoStore, cited: ReadonlySet<string>, tally: Tally): Promise<void> {
  if (!photos.path) {
    tally.note('not looked for: objects that no fact cites (this photo store cannot be listed)')
    return
  }
  const root = dirname(dirname(photos.path('0'.repeat(64))))
  for (const folder of await namesIn(root))
    for (const name of folder === '.incoming' ? [] : await namesIn(join(root, folder)))
      if (!isSha256Hex(name) || !cited.has(name))
        tally.note(`unused: ${join(folder, name)} in the photo store; no fact cites it, and it may be removed`)
}

async function namesIn(folder: string): Promise<string[]> {
  return ((await readdir(folder).catch(nullWhenAbsent)) ?? []).sort()
}

function nullWhenAbsent(error: NodeJS.ErrnoException): null {
  if (error.code === 'ENOENT' || error.code === 'ENOTDIR') return null
  throw error
}
