import { describe, expect, test } from 'vitest'
import { base64Of, parseBase64 } from '@/lib/evidence/base64'
import { parseCheckpoint, verifyCheckpoint } from '@/lib/evidence/checkpoint'
import { parseFactBytes } from '@/lib/evidence/fact-of-bytes'
import { parseLeaf } from '@/lib/evidence/leaf'
import { makeLogKey, parsePrivateKey, writePrivateKey } from '@/lib/evidence/log-key'
import { parseOrigin, writeOrigin } from '@/lib/evidence/origin'
import { parseCanonical } from '@/lib/evidence/parse-canonical'
import { parseProof } from '@/lib/evidence/verify-proof'
import { makeVkey, parseVkey } from '@/lib/evidence/vkey'
import { example, exampleCheckpoint } from './format-examples'

const bytes = (text: string) => new TextEncoder().encode(text)
const note = exampleCheckpoint('checkpoint-5')
const vkey = parseVkey(example('vkeys').split('\n')[1] ?? '')

describe('base64', () => {
  test('what is written is read again, for every length of rest', () => {
    for (let length = 0; length < 12; length += 1) {
      const some = Uint8Array.from({ length }, (_, at) => 251 * at)
      expect(parseBase64(base64Of(some))).toEqual(some)
    }
  })
  test.each(['AA', 'AA=', 'AB==', 'A===', 'A A=', 'AA==\n', '_-8=', '=AAA'])('%j is refused', (text) => {
    expect(parseBase64(text)).toBeNull()
  })
})

describe('canonical JSON', () => {
  test.each([
    ['{"a":1,"a":1}', 'not-canonical'],
    ['{"b":1,"a":2}', 'not-canonical'],
    ['{"a": 1}', 'not-canonical'],
    ['{"a":1.0}', 'not-canonical'],
    ['-0', 'not-canonical'],
    ['"\\u0061"', 'not-canonical'],
    ['"\\ud800"', 'not-canonical'],
    ['\ufeff{}', 'not-json'],
    ['{} {}', 'not-json'],
    ['', 'not-json'],
    ['['.repeat(100_000), 'too-deep'],
  ])('%.20j is %s', (text, code) => {
    expect(parseCanonical(bytes(text))).toEqual({ ok: false, error: { code } })
  })
  test('bytes that are no text are not-utf8', () => {
    expect(parseCanonical(Uint8Array.of(0x22, 0xff, 0x22))).toEqual({ ok: false, error: { code: 'not-utf8' } })
  })
  test('brackets within a text are no depth', () => {
    expect(parseCanonical(bytes(JSON.stringify(`\\"${'['.repeat(500)}`))).ok).toBe(true)
  })
  test('a fact and a leaf with a member too many are refused by name', () => {
    const fact = JSON.parse(example('facts').split('\n')[1] ?? '')
    expect(parseFactBytes(bytes(JSON.stringify({ ...fact, zzz: 1 })))).toMatchObject({
      ok: false,
      error: { code: 'fact-refused' },
    })
    const leaf = example('leaves').split('\n')[1] ?? ''
    expect(parseLeaf(bytes(leaf.replace('"v":1}', '"v":1,"w":1}')))).toMatchObject({
      error: { code: 'leaf-malformed' },
    })
    expect(parseLeaf(bytes(leaf.replace('"position":1', '"position":0')))).toEqual({
      ok: false,
      error: { code: 'leaf-malformed', at: ['position'] },
    })
  })
})

describe('checkpoint', () => {
  test.each([
    ['no signature', note.split('—')[0] ?? '', 'form'],
    ['an extension line', note.replace('\n\n', '\nmore\n\n'), 'form'],
    ['something behind the end', `${note}x`, 'form'],
    ['no line break at the end', note.slice(0, -1), 'form'],
    ['carriage returns', note.replaceAll('\n', '\r\n'), 'form'],
    ['a second empty line at the end', `${note}\n`, 'signature'],
    ['a leading zero', note.replace('\n5\n', '\n05\n'), 'size'],
    ['no leaves', note.replace('\n5\n', '\n0\n'), 'size'],
    ['a size beyond whole numbers', note.replace('\n5\n', '\n9999999999999999\n'), 'size'],
    ['a short root', note.replace(/\n[^\n]{44}\n/, '\nAAAA\n'), 'root'],
    ['stray bits in the root', note.replace('ARu4=', 'ARu5='), 'root'],
    ['another origin form', note.replace(/^underwrap/, 'Underwrap'), 'origin'],
    ['a hyphen for the dash', note.replace('—', '-'), 'signature'],
    ['seventeen signatures', note + note.split('\n\n')[1]?.repeat(16), 'length'],
    ['twenty thousand characters', note + 'A'.repeat(20_000), 'length'],
  ])('with %s is refused', (_, text, at) => {
    expect(parseCheckpoint(text)).toEqual({ ok: false, error: { code: 'checkpoint-malformed', at } })
  })

  test('any changed character is refused or no longer verifies', () => {
    if (!vkey.ok) throw new Error('the key of the example')
    const verifies = (text: string) => {
      const parsed = parseCheckpoint(text)
      return parsed.ok && verifyCheckpoint(parsed.value, vkey.value)
    }
    expect(verifies(note)).toBe(true)
    for (let at = 0; at < note.length; at += 1)
      for (const other of ['A', '0', ' ', '\n'])
        if (note[at] !== other)
          expect([at, verifies(note.slice(0, at) + other + note.slice(at + 1))]).toEqual([at, false])
  })

  test('a true signature beside a false one of the same key does not verify', () => {
    if (!vkey.ok) throw new Error('the key of the example')
    const line = note.split('\n\n')[1] ?? ''
    const parsed = parseCheckpoint(note + line.replace('8J8', '8J9'))
    expect(parsed.ok && verifyCheckpoint(parsed.value, vkey.value)).toBe(false)
  })
})

describe('keys and origins', () => {
  test.each([
    ['', 'form'],
    ['a b+00000000+AAAA', 'form'],
    ['name+0000000G+AAAA', 'form'],
    ['name+00000000+A', 'base64'],
    [`name+00000000+${base64Of(new Uint8Array(33))}`, 'algorithm'],
    [`name+00000000+${base64Of(Uint8Array.of(1, 2))}`, 'algorithm'],
    [`name+00000000+${base64Of(Uint8Array.of(1, ...new Uint8Array(32)))}`, 'key-id'],
  ])('vkey %j is refused for its %s', (text, problem) => {
    expect(parseVkey(text)).toEqual({ ok: false, error: { code: 'vkey-malformed', problem } })
  })
  test('a secret key is read again from its line, and not from a changed one', () => {
    const key = makeLogKey('underwrap/0123456789abcdef/a', new Uint8Array(32).fill(7))
    expect(parsePrivateKey(writePrivateKey(key))).toEqual(key)
    expect(parsePrivateKey(key.vkey.text)).toBeNull()
    expect(parsePrivateKey(writePrivateKey(key).replace(key.vkey.keyId, '00000000'))).toBeNull()
    expect(parsePrivateKey(writePrivateKey(key).replace('/a+', '/b+'))).toBeNull()
  })
  test('names that cannot stand in a key or an origin are refused', () => {
    expect(() => makeVkey('a+b', new Uint8Array(32))).toThrow(RangeError)
    expect(() => makeVkey('a', new Uint8Array(31))).toThrow(RangeError)
    expect(() => writeOrigin({ storeId: '0123456789abcdef', tenant: 'a b', isDemo: false })).toThrow(RangeError)
    const origin = { storeId: '0123456789abcdef', tenant: 'x-1', isDemo: true }
    expect(parseOrigin(writeOrigin(origin))).toEqual(origin)
    expect(parseOrigin('underwrap/0123456789ABCDEF/x')).toBeNull()
  })
  test('a proof with a hash of another length, or more hashes than a tree has levels, is none', () => {
    expect(parseProof([base64Of(new Uint8Array(31))])).toBeNull()
    expect(parseProof(Array.from({ length: 129 }, () => base64Of(new Uint8Array(32))))).toBeNull()
  })
})
