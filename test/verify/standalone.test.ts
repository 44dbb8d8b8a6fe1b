import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { holderByHand } from './holder-by-hand'
import { preparedWorld } from './signed-by-hand'

const ROOT = fileURLToPath(new URL('../..', import.meta.url))
let folder: string
let world: Awaited<ReturnType<typeof preparedWorld>>
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'underwrap-checker-'))
  world = await preparedWorld()
  const built = spawnSync(
    process.execPath,
    ['--import', 'tsx', 'lib/cli/build-verifier.ts', join(folder, 'check.mjs')],
    {
      cwd: ROOT,
      encoding: 'utf8',
    },
  )
  if (built.status !== 0) throw new Error(built.stderr)
  writeFileSync(join(folder, 'dossier.pdf'), world.file)
  const changed = world.file.slice()
  const at = Buffer.from(changed).indexOf('rendition of')
  changed[at] = 0x52
  writeFileSync(join(folder, 'changed.pdf'), changed)
  writeFileSync(join(folder, 'log.txt'), world.log.export(world.holder.key))
  writeFileSync(join(folder, 'key.txt'), `${world.holder.key.vkey.text}\n`)
  writeFileSync(join(folder, 'other.txt'), (await holderByHand(9)).key.vkey.text)
  writeFileSync(join(folder, 'earlier.txt'), world.log.checkpoint(world.holder.key, 500))
})
afterAll(() => rmSync(folder, { recursive: true }))

/** Run the one file with `node` alone, from its own folder, where nothing is installed. */
function run(...parameters: string[]): { status: number | null; out: string; error: string } {
  const ran = spawnSync(process.execPath, ['check.mjs', ...parameters], {
    cwd: folder,
    encoding: 'utf8',
    env: { NODE_ENV: 'test' },
  })
  return { status: ran.status, out: ran.stdout, error: ran.stderr }
}

describe('the checker as one file', () => {
  test('lies in a folder without any package', () => {
    expect(readdirSync(folder)).not.toContain('node_modules')
  })

  test.each([
    [['dossier.pdf'], 0, 'Signer not known to you'],
    [['dossier.pdf', '--key', 'key.txt', '--checkpoint', 'earlier.txt'], 0, 'Signer known'],
    [['log.txt', '--checkpoint', 'earlier.txt'], 0, 'still holds all 500 facts'],
    [['dossier.pdf', '--key', 'other.txt'], 1, 'Other signer'],
    [['changed.pdf'], 1, '[photo-digest]'],
    [['key.txt'], 2, 'Unreadable'],
  ])('%j exits %i and says %s', (parameters, status, text) => {
    const ran = run(...parameters)
    expect(ran).toMatchObject({ status, error: '' })
    expect(ran.out).toContain(text)
  })

  test('answers as JSON', () => {
    expect(JSON.parse(run('dossier.pdf', '--json').out)).toMatchObject({
      answer: 'intact',
      signer: 'not known',
      breaks: [],
      verdicts: { agreed: 112, total: 112 },
    })
  })

  test.each([
    [[]],
    [['nowhere.pdf']],
    [['dossier.pdf', '--key', 'dossier.pdf']],
    [['dossier.pdf', '--fingerprint', 'ab']],
    [['dossier.pdf', '--loud']],
  ])('%j is wrong use: exit 3 and one line', (parameters) => {
    const ran = run(...parameters)
    expect(ran).toMatchObject({ status: 3, out: '' })
    expect(ran.error.trim().split('\n')).toHaveLength(1)
  })
})
