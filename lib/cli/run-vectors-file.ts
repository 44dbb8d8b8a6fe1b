import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { runVectors } from '@/lib/calc/vectors-run'
import { PlainError } from './plain-error'
import { say } from './say'

/** `vectors FILE`: run reference cases through the shipped formulas; needs no store. */
export async function runVectorsFile(parameters: string[]): Promise<void> {
  const [file] = parameters
  if (!file) throw new PlainError('Say which file: underwrap vectors FILE.json')
  const sha256 = (bytes: Uint8Array) => new Uint8Array(createHash('sha256').update(bytes).digest())
  const text = await readFile(file, 'utf8').catch((cause: NodeJS.ErrnoException) => {
    throw new PlainError(`${file} cannot be read (${cause.code ?? 'unknown reason'}).`)
  })
  const { passed, mismatches } = runVectors(JSON.parse(text), sha256)
  for (const { id, got, expected } of mismatches)
    await say(`${id} got ${JSON.stringify(got)} expected ${JSON.stringify(expected)}`)
  await say(`${passed} passed, ${mismatches.length} failed`)
  if (mismatches.length > 0) process.exitCode = 1
}
