import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type Hostile, hostileFiles } from './hostile-files'
import { preparedWorld } from './signed-by-hand'

const MOST_MS = 10_000
const MOST_MB = 500
type Told = { told: { path: string; answer: string; codes: string[]; ms: number }[]; peakMB: number }

let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'underwrap-hostile-'))
})
afterAll(() => rmSync(folder, { recursive: true }))

/** Check files in a process of its own, with its time for each and its peak of memory. */
function checkInChild(files: readonly Hostile[]): Told {
  const paths = files.map(({ file }, index) => {
    const path = join(folder, `${index}`)
    writeFileSync(path, file)
    return path
  })
  const child = spawnSync(
    process.execPath,
    ['--import', 'tsx', fileURLToPath(new URL('hostile-child.ts', import.meta.url)), ...paths],
    { encoding: 'utf8', maxBuffer: 1 << 26 },
  )
  if (child.status !== 0) throw new Error(child.stderr.slice(0, 2000))
  return JSON.parse(child.stdout)
}

describe('hostile input', () => {
  test('huge lengths, loops, bombs, deep nesting and random bytes: never intact, an answer within seconds and 500 MB', {
    timeout: 300_000,
  }, () => {
    const files = hostileFiles()
    const { told, peakMB } = checkInChild(files)
    expect(told).toHaveLength(files.length)
    for (const [index, { answer, codes, ms }] of told.entries()) {
      const name = files[index]?.name
      expect({ name, isIntact: answer === 'intact', isNamed: codes.length > 0 }).toEqual({
        name,
        isIntact: false,
        isNamed: true,
      })
      expect(ms, name).toBeLessThan(MOST_MS)
    }
    expect(peakMB).toBeLessThan(MOST_MB)
  })

  test('a dossier cut off at every hundredth of its length: never intact', { timeout: 300_000 }, async () => {
    const { file } = await preparedWorld()
    const cuts = Array.from({ length: 100 }, (_, percent) => ({
      name: `${percent} %`,
      file: file.subarray(0, Math.floor((file.length * percent) / 100)),
    }))
    const { told, peakMB } = checkInChild(cuts)
    expect(told.map((one) => one.answer).filter((answer) => answer !== 'unreadable')).toEqual([])
    expect(Math.max(...told.map((one) => one.ms))).toBeLessThan(MOST_MS)
    expect(peakMB).toBeLessThan(MOST_MB)
  })
})
