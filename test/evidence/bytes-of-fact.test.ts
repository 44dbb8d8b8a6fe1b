import { describe, expect, test } from 'vitest'
import { parseFact } from '@/lib/domain/facts/fact-kinds'
import { bytesOfFact, digestOfFact } from '@/lib/evidence/bytes-of-fact'
import { factOfBytes } from '@/lib/evidence/fact-of-bytes'
import { sha256Of } from '@/lib/evidence/sha256'
import { remark } from '@/test/store/facts-for-tests'

function parsed(json: unknown) {
  const fact = parseFact(json)
  if (!fact.ok) throw new Error('the fact of the test is none')
  return fact.value
}

describe('bytes of a fact', () => {
  test('bytes and fact turn into each other without loss', () => {
    const fact = parsed(remark('as found: 2½ “µm” – Ωß'))
    const bytes = bytesOfFact(fact)
    expect(factOfBytes(bytes)).toEqual(fact)
    expect(bytesOfFact(factOfBytes(bytes))).toEqual(bytes)
    expect(digestOfFact(fact)).toBe(sha256Of(bytes))
  })

  test('a fact keyed with surrounding blanks has the bytes of the parsed one, so every device hashes the same', () => {
    const json = remark('  blanks  ')
    expect(digestOfFact(parsed(json))).toBe(digestOfFact(parsed({ ...json, body: { text: 'blanks' } })))
  })

  test('bytes that say no fact throw', () => {
    expect(() => factOfBytes(new TextEncoder().encode('{"v":2}'))).toThrow('no fact')
    expect(() => factOfBytes(Uint8Array.of(0xff))).toThrow()
  })
})
