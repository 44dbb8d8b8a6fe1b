import { createHash } from 'node:crypto'
import type { Readable } from 'node:stream'
import { type Entry, open as openZip, type ZipFile } from 'yauzl'
import { parseCanonical } from '@/lib/evidence/parse-canonical'
import { BackupRefused } from './backup-refusal'
import { BackupManifest, FileName } from './manifest'

/** A backup opened for reading: its manifest, and each file's bytes checked against it as they are read. */
export type OpenBackup = {
  manifest: BackupManifest
  /** Read a file of the manifest. @throws BackupRefused `damaged` at its end when the bytes are others */
  read(name: string): AsyncGenerator<Buffer>
  close(): void
}

const ENTRIES_AT_MOST = 2_000_001
const MANIFEST_AT_MOST_BYTES = 400_000_000
/** More than DEFLATE can do on rows of text; what claims more is made to fill a disk. */
const RATIO_AT_MOST = 1100
const MANIFEST = 'manifest.json'

/**
 * Open a backup. Every name is one that a backup may have, none comes twice, and the files are exactly those of the manifest, of the sizes it says.
 * Nothing is written. @throws BackupRefused `unreadable` or `damaged`
 */
export async function readBackup(path: string): Promise<OpenBackup> {
  const zip = await openFile(path)
  try {
    const entries = await entriesOf(zip)
    const manifest = await manifestOf(zip, entries)
    for (const { name, sizeBytes } of manifest.files)
      if (entries.get(name)?.uncompressedSize !== sizeBytes)
        throw new BackupRefused('damaged', `The backup lacks ${name}, or it has another size.`)
    if (entries.size !== manifest.files.length + 1)
      throw new BackupRefused('damaged', 'The backup holds a file that its manifest does not name.')
    const known = new Map(manifest.files.map((file) => [file.name, file.sha256 as string]))
    return {
      manifest,
      async *read(name) {
        const entry = entries.get(name)
        if (!entry) throw new BackupRefused('damaged', `The backup lacks ${name}.`)
        const hash = createHash('sha256')
        for await (const piece of pieces(zip, entry)) {
          hash.update(piece)
          yield piece
        }
        if (hash.digest('hex') !== known.get(name)) throw new BackupRefused('damaged', `${name} was changed.`)
      },
      close: () => zip.close(),
    }
  } catch (cause) {
    zip.close()
    throw cause
  }
}

function openFile(path: string): Promise<ZipFile> {
  return new Promise((settle, fail) =>
    openZip(
      path,
      { lazyEntries: true, autoClose: false, validateEntrySizes: true, strictFileNames: true },
      (error, zip) =>
        error ? fail(new BackupRefused('unreadable', `${path} is no backup: ${error.message}.`)) : settle(zip),
    ),
  )
}

async function entriesOf(zip: ZipFile): Promise<Map<string, Entry>> {
  if (zip.entryCount > ENTRIES_AT_MOST) throw new BackupRefused('unreadable', 'The backup holds too many files.')
  const entries = new Map<string, Entry>()
  await new Promise<void>((settle, fail) => {
    zip.once('error', (error: Error) =>
      fail(new BackupRefused('unreadable', `The backup is damaged: ${error.message}.`)),
    )
    zip.once('end', () => settle())
    zip.on('entry', (entry: Entry) => {
      const { fileName } = entry
      if (fileName !== MANIFEST && !FileName.safeParse(fileName).success)
        return fail(
          new BackupRefused(
            'damaged',
            `The backup holds a file of a strange name: ${JSON.stringify(fileName.slice(0, 80))}.`,
          ),
        )
      if (entries.has(fileName)) return fail(new BackupRefused('damaged', `The backup holds ${fileName} twice.`))
      if (entry.isEncrypted() || entry.uncompressedSize > RATIO_AT_MOST * (entry.compressedSize + 64))
        return fail(new BackupRefused('damaged', `${fileName} is packed as no backup is.`))
      entries.set(fileName, entry)
      zip.readEntry()
    })
    zip.readEntry()
  })
  return entries
}

async function manifestOf(zip: ZipFile, entries: ReadonlyMap<string, Entry>): Promise<BackupManifest> {
  const entry = entries.get(MANIFEST)
  if (!entry || entry.uncompressedSize > MANIFEST_AT_MOST_BYTES)
    throw new BackupRefused('unreadable', 'The file is no backup: it has no manifest.')
  const all: Buffer[] = []
  for await (const piece of pieces(zip, entry)) all.push(piece)
  const value = parseCanonical(Buffer.concat(all))
  const manifest = value.ok ? BackupManifest.safeParse(value.value) : null
  if (!manifest?.success) throw new BackupRefused('unreadable', 'The manifest of the backup cannot be read.')
  if (new Set(manifest.data.files.map((file) => file.name)).size !== manifest.data.files.length)
    throw new BackupRefused('damaged', 'The manifest names a file twice.')
  return manifest.data
}

async function* pieces(zip: ZipFile, entry: Entry): AsyncGenerator<Buffer> {
  const damaged = (error: Error) =>
    new BackupRefused('damaged', `${entry.fileName} cannot be unpacked: ${error.message}.`)
  const stream = await new Promise<Readable>((settle, fail) =>
    zip.openReadStream(entry, (error, opened) => (error ? fail(damaged(error)) : settle(opened))),
  )
  try {
    yield* stream
  } catch (cause) {
    throw cause instanceof Error ? damaged(cause) : cause
  }
}
