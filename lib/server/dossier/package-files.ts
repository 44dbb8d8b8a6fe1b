import { createReadStream } from 'node:fs'
import { open } from 'node:fs/promises'
import { Readable } from 'node:stream'
import { sha256Of, sha256OfFile } from '@/lib/evidence/sha256'
import type { PhotoStore } from '@/lib/photo/photo-store'

/** One file of a package: its digest and size are known before it is read. */
export type PackageFile = { name: string; sha256: string; sizeBytes: number; isPacked: boolean; open(): Readable }

/** Bytes at hand as a file of a package. */
export function fileOfBytes(name: string, bytes: Uint8Array): PackageFile {
  return {
    name,
    sha256: sha256Of(bytes),
    sizeBytes: bytes.length,
    isPacked: true,
    open: () => Readable.from([Buffer.from(bytes)]),
  }
}

/** A stored object as a file of a package; null when it is not stored or is not what its digest says. It is read twice: to be checked, then to be packed. */
export async function fileOfObject(
  photos: PhotoStore,
  sha256: string,
  nameOf: (start: Uint8Array) => string,
): Promise<PackageFile | null> {
  if (!(await photos.has(sha256))) return null
  const path = photos.path?.(sha256)
  if (!path) {
    const bytes = await photos.read(sha256)
    return bytes && sha256Of(bytes) === sha256
      ? { ...fileOfBytes(nameOf(bytes.subarray(0, 512)), bytes), isPacked: false }
      : null
  }
  if ((await sha256OfFile(path)) !== sha256) return null
  const [start, sizeBytes] = await startOf(path)
  return {
    name: nameOf(start),
    sha256,
    sizeBytes,
    isPacked: false,
    open: () => createReadStream(/*turbopackIgnore: true*/ path),
  }
}

async function startOf(path: string): Promise<[Uint8Array, number]> {
  const file = await open(/*turbopackIgnore: true*/ path)
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(512), 0, 512, 0)
    return [buffer.subarray(0, bytesRead), (await file.stat()).size]
  } finally {
    await file.close()
  }
}
