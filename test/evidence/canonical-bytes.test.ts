import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { sha256Of } from '@/lib/evidence/sha256'
import { runsAsked } from '../runs'

fc.configureGlobal({ numRuns: runsAsked() })

const textOf = (value: unknown) => new TextDecoder().decode(canonicalBytes(value))

describe('canonical bytes', () => {
  test('the worked example of RFC 8785 section 3.2.3 is met', () => {
    const value = JSON.parse(
      '{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/","literals":[null,true,false]}',
    )
    expect(textOf(value)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    )
  })

  test('keys are sorted by UTF-16 code units, deep inside too', () => {
    expect(textOf({ b: { '10': 1, '9': 2, ä: 3, z: 4 }, a: [] })).toBe('{"a":[],"b":{"10":1,"9":2,"z":4,"ä":3}}')
  })

  test('the order in which keys were written never changes the bytes', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const turned = (one: unknown): unknown =>
          Array.isArray(one)
            ? one.map(turned)
            : one !== null && typeof one === 'object'
              ? Object.fromEntries(
                  Object.entries(one)
                    .reverse()
                    .map(([key, inner]) => [key, turned(inner)]),
                )
              : one
        expect(canonicalBytes(turned(value))).toEqual(canonicalBytes(value))
        expect(JSON.parse(textOf(value))).toEqual(JSON.parse(JSON.stringify(value)))
      }),
    )
  })

  test('a value without a JSON form throws', () => {
    expect(() => canonicalBytes(undefined)).toThrow(TypeError)
  })

  test('the digest is SHA-256 in lower-case hex', () => {
    expect(sha256Of(new TextEncoder().encode('abc'))).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    )
  })
})
