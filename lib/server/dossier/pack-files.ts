import { Readable } from 'node:stream'
import { ZipFile } from 'yazl'
import type { GatheredPackage } from './gather-package'

/** A package as a ZIP, made while it is read: one file open at a time, photos and the dossier stored as they are. The same contents give the same bytes. */
export function packFiles({ files, asOf }: GatheredPackage): Readable {
  const zip = new ZipFile()
  const mtime = new Date(asOf)
  for (const { name, sizeBytes, isPacked, open } of files)
    zip.addReadStreamLazy(name, { mtime, mode: 0o100644, compress: isPacked, size: sizeBytes }, (give) =>
      give(null, open()),
    )
  const out = new Readable().wrap(zip.outputStream)
  zip.on('error', (cause: Error) => out.destroy(cause))
  zip.end()
  return out
}
