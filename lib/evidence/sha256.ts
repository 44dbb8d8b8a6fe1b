import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { Sha256 } from '@/lib/domain/facts/fact'

/** SHA-256 of bytes, lower-case hex. */
export function sha256Of(bytes: Uint8Array): Sha256 {
  return Sha256.parse(createHash('sha256').update(bytes).digest('hex'))
}

/** SHA-256 of a file, read in pieces. @throws when the file cannot be read */
export async function sha256OfFile(path: string): Promise<Sha256> {
  const hash = createHash('sha256')
  for await (const chunk of createReadStream(path)) hash.update(chunk)
  return Sha256.parse(hash.digest('hex'))
}
