import { open } from 'yauzl'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { sha256Of } from '@/lib/evidence/sha256'

/** Every file of a ZIP by name. */
export function filesOfZip(path: string): Promise<Map<string, Buffer>> {
  return new Promise((settle, fail) =>
    open(path, { lazyEntries: true }, (error, zip) => {
      if (error) return fail(error)
      const files = new Map<string, Buffer>()
      zip.on('end', () => settle(files))
      zip.on('error', fail)
      zip.on('entry', (entry) =>
        zip.openReadStream(entry, async (problem, stream) => {
          if (problem) return fail(problem)
          const pieces: Buffer[] = []
          for await (const piece of stream) pieces.push(piece)
          files.set(entry.fileName, Buffer.concat(pieces))
          zip.readEntry()
        }),
      )
      zip.readEntry()
    }),
  )
}

/** Facts with one figure changed, digests and manifest made to fit: what somebody could write who has the backup but no log key. */
export async function forged(files: ReadonlyMap<string, Buffer>): Promise<{ manifest: Buffer; facts: Buffer }> {
  const lines = (files.get('tables/facts.jsonl') ?? Buffer.alloc(0)).toString().trimEnd().split('\n')
  const rows = lines.map((line) => {
    const row = JSON.parse(line)
    if (row.kind !== 'recorded') return line
    const bytes = Buffer.from(Buffer.from(row.bytes.slice(2), 'hex').toString().replace('640', '641'))
    return JSON.stringify({ ...row, bytes: `\\x${bytes.toString('hex')}`, sha256: sha256Of(bytes) })
  })
  const facts = Buffer.from(`${rows.join('\n')}\n`)
  const manifest = JSON.parse((files.get('manifest.json') ?? Buffer.alloc(0)).toString())
  for (const entry of manifest.files)
    if (entry.name === 'tables/facts.jsonl') Object.assign(entry, { sha256: sha256Of(facts), sizeBytes: facts.length })
  return { manifest: Buffer.from(canonicalBytes(manifest)), facts }
}
