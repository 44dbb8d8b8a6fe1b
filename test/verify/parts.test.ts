import { deflateRawSync, deflateSync } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { sourceOfBytes } from '@/lib/verify/byte-source'
import { isInOrder, NotDer, oidOf, readDer } from '@/lib/verify/cms/read-der'
import { inflate } from '@/lib/verify/pdf/inflate'
import { parseObject } from '@/lib/verify/pdf/parse-object'
import { InflateRefused } from '@/lib/verify/pdf/prefix-codes'
import { PdfMalformed, ValueReader } from '@/lib/verify/pdf/read-value'
import { readLines } from '@/lib/verify/read-lines'
import { runsAsked } from '../runs'

const bytesOf = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'latin1'))
const hex = (text: string): Uint8Array => new Uint8Array(Buffer.from(text.replace(/ /g, ''), 'hex'))

describe('unpacking', () => {
  test('gives back what was packed, at every level', () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ maxLength: 60 }), { maxLength: 60 }),
        fc.integer({ min: 0, max: 9 }),
        (texts, level) => {
          const bytes = Buffer.from([...texts, ...texts, texts.join('')].join('|'))
          expect(Buffer.from(inflate(new Uint8Array(deflateSync(bytes, { level })), bytes.length))).toEqual(bytes)
        },
      ),
      { numRuns: runsAsked() },
    )
  })

  test('refuses another size, a cut, a changed byte, something behind, and what is no zlib stream', () => {
    const bytes = Buffer.from(Array.from({ length: 400 }, (_, at) => `reading ${at * at} `).join(''))
    const packed = new Uint8Array(deflateSync(bytes))
    for (const size of [0, bytes.length - 1, bytes.length + 1])
      expect(() => inflate(packed, size)).toThrow(InflateRefused)
    for (let length = 0; length < packed.length; length += 1)
      expect(() => inflate(packed.subarray(0, length), bytes.length)).toThrow(InflateRefused)
    for (let at = 0; at < packed.length; at += 1) {
      const changed = packed.slice()
      changed[at] = (changed[at] ?? 0) ^ 0x10
      const isSame = ((): boolean => {
        try {
          return Buffer.from(inflate(changed, bytes.length)).equals(bytes)
        } catch (error) {
          if (error instanceof InflateRefused) return false
          throw error
        }
      })()
      // the level that the head claims is nobody's business; its check bits are
      expect(isSame, `byte ${at}`).toBe(false)
    }
    expect(() => inflate(Uint8Array.of(...packed, 0), bytes.length)).toThrow(InflateRefused)
    expect(() => inflate(new Uint8Array(deflateRawSync(bytes)), bytes.length)).toThrow(InflateRefused)
  })
})

describe('DER', () => {
  test.each([
    ['30 03 02 01 05', 'a number in a sequence'],
    ['01 01 ff', 'true'],
    ['06 03 2a 86 48', 'an identifier'],
    ['03 02 06 c0', 'two bits'],
  ])('%s (%s) is read', (text) => {
    expect(Buffer.from(readDer(hex(text)).bytes)).toEqual(Buffer.from(hex(text)))
  })

  test.each([
    ['30 80 00 00', 'a length without end'],
    ['30 81 03 02 01 05', 'a length that is not the shortest'],
    ['30 82 00 03 02 01 05', 'a length with a leading zero'],
    ['02 02 00 05', 'a number with a leading zero'],
    ['02 02 ff ff', 'a negative number too long'],
    ['02 00', 'a number without digits'],
    ['01 01 01', 'a boolean that is neither'],
    ['05 01 00', 'a null with contents'],
    ['06 02 80 01', 'an identifier with an empty digit'],
    ['06 01 80', 'an identifier without end'],
    ['03 02 06 c1', 'unused bits that are not zero'],
    ['03 02 08 00', 'more unused bits than there are'],
    ['1f 01 00', 'a long tag'],
    ['30 05 02 01 05', 'a length beyond the end'],
    ['02 01 05 00', 'something behind'],
    ['', 'nothing'],
  ])('%s (%s) is refused', (text) => {
    expect(() => readDer(hex(text))).toThrow(NotDer)
  })

  test('identifiers are told in dots, and sets know their order', () => {
    expect(oidOf(readDer(hex('06 09 2a 86 48 86 f7 0d 01 07 02')))).toBe('1.2.840.113549.1.7.2')
    expect(oidOf(readDer(hex('02 01 05')))).toBe('')
    const values = readDer(hex('30 06 02 01 02 02 01 01')).parts
    expect(isInOrder(values)).toBe(false)
    expect(isInOrder([...values].reverse())).toBe(true)
  })
})

describe('values of the file', () => {
  test.each([
    '<< /A 1 /A 2 >>',
    '<< /A 1',
    '[1 2',
    '(open',
    '<0a',
    'nonsense',
    '1.2.3',
    '% note\n1',
    '<< 1 /A >>',
    '1e5',
  ])('%s is refused', (text) => {
    expect(() => new ValueReader(bytesOf(text)).value()).toThrow(PdfMalformed)
  })

  test('a name spelt with number signs is the same name', () => {
    expect(new ValueReader(bytesOf('/DCT#44ecode')).value()).toMatchObject({ kind: 'name', name: 'DCTDecode' })
  })

  test('an object must fill its place exactly', () => {
    expect(parseObject(bytesOf('3 0 obj\n<< /Length 2 >>\nstream\nab\nendstream\nendobj\n'), 3).stream).toEqual(
      bytesOf('ab'),
    )
    for (const text of [
      '3 0 obj\n5\nendobj\n',
      '4 0 obj\n5\nendobj',
      '4 0 obj\n5 \nendobj\n',
      '4 0 obj\n5\nendobj\n\n',
      '4 0 obj\n<< /Length 3 >>\nstream\nab\nendstream\nendobj\n',
      '4 0 obj\n<< /Length 1 >>\nstream\nab\nendstream\nendobj\n',
      '4 0 obj\n<< /Length 5 0 R >>\nstream\nab\nendstream\nendobj\n',
    ])
      expect(() => parseObject(bytesOf(text), 4)).toThrow(PdfMalformed)
  })
})

describe('lines', () => {
  test('come whole across the pieces that are read, and a last one without its break is none', async () => {
    const long = 'x'.repeat(1_500_000)
    const collected: (number | null)[] = []
    for await (const line of readLines(sourceOfBytes(bytesOf(`a\n${long}\n\nend`)), () => {}))
      collected.push(line?.length ?? null)
    expect(collected).toEqual([1, 1_500_000, 0, null])
  })
})
