import { createHash } from 'node:crypto'
import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { runVectors } from '@/lib/calc/vectors-run'

const path = fileURLToPath(new URL('../../../shared/vectors/vectors.json', import.meta.url))
const sha256 = (bytes: Uint8Array) => new Uint8Array(createHash('sha256').update(bytes).digest())

describe('reference cases', () => {
  test('every published case is met', ({ skip }) => {
    if (!existsSync(path)) skip('the reference cases are not beside this project')
    const run = runVectors(JSON.parse(readFileSync(path, 'utf8')), sha256)
    expect(run.mismatches).toEqual([])
    expect(run.passed).toBe(255)
  })
})
