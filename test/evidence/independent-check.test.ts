import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { example, exampleCheckpoint } from './format-examples'

const folder = mkdtempSync(join(tmpdir(), 'underwrap-evidence-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

function keep(name: string, content: string | Uint8Array): string {
  const path = join(folder, name)
  writeFileSync(path, content)
  return path
}

/** The DER of a public key of Ed25519 (RFC 8410) around the 32 bytes that the last part of a vkey holds. */
function pemOf(vkey: string): string {
  const key = Buffer.from(vkey.split('+').slice(2).join('+'), 'base64').subarray(1)
  const der = Buffer.concat([Buffer.from('302a300506032b6570032100', 'hex'), key])
  return `-----BEGIN PUBLIC KEY-----\n${der.toString('base64')}\n-----END PUBLIC KEY-----\n`
}

describe('by tools that are not ours', () => {
  const hasOpenssl = spawnSync('openssl', ['version']).status === 0
  test.skipIf(!hasOpenssl)(
    "openssl verifies a checkpoint's signature, and refuses a changed text [needs openssl]",
    () => {
      const [text = '', signatures = ''] = exampleCheckpoint('checkpoint-5').split('\n\n')
      const signature = Buffer.from(signatures.trim().split(' ').at(-1) ?? '', 'base64').subarray(4)
      const key = keep('key.pem', pemOf(example('vkeys').split('\n')[1] ?? ''))
      const verify = (message: string) =>
        spawnSync(
          'openssl',
          [
            'pkeyutl',
            '-verify',
            '-rawin',
            '-pubin',
            '-inkey',
            key,
            '-in',
            keep('message', message),
            '-sigfile',
            keep('signature', signature),
          ],
          { encoding: 'utf8' },
        )
      expect(verify(`${text}\n`)).toMatchObject({ status: 0, stdout: expect.stringContaining('Verified Successfully') })
      expect(verify(`${text.replace('\n5\n', '\n6\n')}\n`).status).not.toBe(0)
    },
  )

  test('a script that knows RFC 6962 alone comes to the signed root, from all leaves and from one proof', () => {
    const recompute = (inclusion: string) =>
      JSON.parse(
        spawnSync(process.execPath, [
          'test/evidence/recompute-inclusion.mjs',
          keep('export', `${example('export')}\n`),
          keep('inclusion', inclusion),
        ]).stdout.toString(),
      )
    const root = exampleCheckpoint('checkpoint-5').split('\n')[2]
    expect(recompute(example('inclusion'))).toEqual({ size: 5, rootOfAll: root, rootOfProof: root })
    const { proof } = JSON.parse(example('inclusion'))
    expect(recompute(JSON.stringify({ index: 3, proof })).rootOfProof).not.toBe(root)
  })
})
