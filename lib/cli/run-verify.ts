import { readFile } from 'node:fs/promises'
import { parseArgs } from 'node:util'
import type { Answer } from '@/lib/verify/answer'
import { showAnswer } from '@/lib/verify/show-answer'
import { type Given, type GivenRefusal, parseTrusted, type Trusted } from '@/lib/verify/trusted'
import { verifyFile } from '@/lib/verify/verify-file'
import { nodeHasher, openFileSource } from './file-source'
import { PlainError } from './plain-error'
import { say } from './say'

const USAGE = 'underwrap verify FILE [--key FILE] [--checkpoint FILE] [--fingerprint HEX] [--json]'
const STATUS: Readonly<Record<Answer['answer'], number>> = { intact: 0, broken: 1, unreadable: 2 }
const WRONG_USE = 3
const GIVEN_WRONG: Readonly<Record<GivenRefusal['code'], string>> = {
  'key-unreadable': 'The key file holds neither a log key line nor a certificate (PEM or DER).',
  'checkpoint-unreadable': 'The checkpoint file does not hold a checkpoint.',
  'fingerprint-unreadable': 'A fingerprint is the SHA-256 of a certificate: 64 hex digits, with or without colons.',
}

/**
 * `verify FILE`: check a dossier or a log export from its bytes alone; needs no store. Exit status 0 intact, 1 broken, 2 unreadable, 3 wrong use.
 * `--key` names a file with a log key line or a certificate, `--checkpoint` one with an earlier checkpoint.
 */
export async function runVerify(parameters: string[]): Promise<void> {
  try {
    const { path, trusted, json } = await readParameters(parameters)
    const source = await openFileSource(path).catch(cannotRead(path))
    try {
      const answer = await verifyFile(source, { trusted, hasher: nodeHasher })
      await say(json ? JSON.stringify(answer, null, 2) : showAnswer(answer))
      process.exitCode = STATUS[answer.answer]
    } finally {
      await source.close()
    }
  } catch (cause) {
    if (!(cause instanceof PlainError)) throw cause
    process.stderr.write(`underwrap verify: ${cause.message}\n`)
    process.exitCode = WRONG_USE
  }
}

async function readParameters(parameters: string[]): Promise<{ path: string; trusted: Trusted; json: boolean }> {
  const { values, positionals } = parsed(parameters)
  const [path, ...others] = positionals
  if (!path || others.length > 0) throw new PlainError(`Say which file: ${USAGE}`)
  const given: Given = {}
  if (values.key !== undefined) given.key = await readFile(values.key).catch(cannotRead(values.key))
  if (values.checkpoint !== undefined)
    given.checkpoint = await readFile(values.checkpoint, 'utf8').catch(cannotRead(values.checkpoint))
  if (values.fingerprint !== undefined) given.fingerprint = values.fingerprint
  const trusted = parseTrusted(given)
  if (!trusted.ok) throw new PlainError(GIVEN_WRONG[trusted.error.code])
  return { path, trusted: trusted.value, json: values.json ?? false }
}

function parsed(args: string[]) {
  try {
    return parseArgs({
      args,
      options: {
        key: { type: 'string' },
        checkpoint: { type: 'string' },
        fingerprint: { type: 'string' },
        json: { type: 'boolean' },
      },
      allowPositionals: true,
      strict: true,
    })
  } catch (cause) {
    throw new PlainError(`${cause instanceof Error ? cause.message : 'wrong use'}. Use: ${USAGE}`, { cause })
  }
}

function cannotRead(path: string): (cause: NodeJS.ErrnoException) => never {
  return (cause) => {
    throw new PlainError(`${path} cannot be read (${cause.code ?? 'unknown reason'}).`, { cause })
  }
}
