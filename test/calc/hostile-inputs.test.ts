import { createHash } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { writeCanonicalJson } from '@/lib/calc/canonical-json'
import { chainLinks, firstBadLink } from '@/lib/calc/hash-chain'
import { verifyInclusion } from '@/lib/calc/merkle-tree'
import { parseStrictJson } from '@/lib/calc/strict-json'
import { vectorsTable } from '@/lib/calc/vectors-table'

const sha256 = (bytes: Uint8Array) => new Uint8Array(createHash('sha256').update(bytes).digest())

describe('what a caller must not do', () => {
  test('a value without a canonical text and a text that is no text throw: they are bugs', () => {
    // @ts-expect-error a JSON value is never undefined
    expect(() => writeCanonicalJson(undefined)).toThrow('a JSON value always has a canonical text')
    // @ts-expect-error a text is never null
    expect(() => parseStrictJson(null)).toThrow(TypeError)
  })

  test('a digest that is not 32 bytes is refused wherever it comes in', () => {
    const digest = sha256(Uint8Array.of(1))
    const short = digest.slice(1)
    expect(chainLinks([], short, sha256)).toEqual({ refused: 'digest_length' })
    expect(firstBadLink([], [digest, short], null, sha256)).toEqual({ refused: 'digest_length' })
    const claim = { index: 0, size: 2, leaf: digest, proof: [digest], head: digest }
    for (const part of [{ leaf: short }, { proof: [digest, short] }, { head: short }])
      expect(verifyInclusion({ ...claim, ...part }, sha256)).toEqual({ refused: 'digest_length' })
    for (const part of [{ index: 0.5 }, { size: 2.5 }, { index: -1 }, { index: 2 }, { size: 0 }])
      expect(verifyInclusion({ ...claim, ...part }, sha256)).toBe(false)
  })

  const table = vectorsTable(sha256)
  test.each([
    ['hash.leaf', { data_hex: 12 }, 'bad_hex'],
    ['hash.tree', { data_hex: ['0g'] }, 'bad_hex'],
    ['hash.tree', { data_hex: ['g0'] }, 'bad_hex'],
    ['hash.tree', {}, 'missing_data_hex'],
    ['hash.tree', { data_hex: [null] }, 'missing_data_hex'],
    ['hash.proof', { data_hex: ['00'] }, 'missing_index'],
    ['hash.verify', {}, 'missing_index'],
    ['hash.verify', { index: 0 }, 'missing_size'],
    ['hash.verify', { index: 0, size: 1 }, 'missing_leaf_hex'],
    ['hash.verify', { index: 0, size: 1, leaf_hex: '00' }, 'missing_proof'],
    ['hash.verify', { index: 0, size: 1, leaf_hex: '00', proof: [] }, 'missing_head'],
    ['hash.chain', { data_hex: [], genesis: 'xx' }, 'bad_hex'],
    ['hash.chain_check', { data_hex: ['00'] }, 'missing_links'],
    ['hash.chain_check', { data_hex: ['00'], links: ['0'] }, 'bad_hex'],
    ['clean.parse', { grade: 'Zz 3' }, 'unknown_grade'],
    ['clean.parse', { grade: 'Sa' }, 'unknown_grade'],
    ['clean.parse', { grade: 'x Sa 3' }, 'unknown_grade'],
    ['clean.parse', { grade: 'Sa 12.5' }, 'unknown_grade'],
    ['clean.parse', { grade: 'Sa 2.55' }, 'unknown_grade'],
    ['jcs.text', { json_text: 7 }, 'not_text_json_text'],
  ])('%s %j is refused: %s', (fn, inputs, code) => {
    expect(table[fn]?.(inputs)).toEqual({ refused: code })
  })
})
