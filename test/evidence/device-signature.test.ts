import { createPublicKey, verify } from 'node:crypto'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Fact, FactOf } from '@/lib/domain/facts/fact-kinds'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { parseFactBytes } from '@/lib/evidence/fact-of-bytes'
import { isDeviceSigned } from '@/lib/evidence/is-device-signed'
import { exampleLines } from './format-examples'

const [key, signed] = exampleLines('device-signature').map((bytes) => {
  const fact = parseFactBytes(bytes)
  if (!fact.ok) throw new Error(JSON.stringify(fact.error))
  return fact.value
}) as [FactOf<'signing-key-taken'>, FactOf<'signed'>]

/** Every way to one value in JSON. */
function pathsOf(value: unknown, path: readonly string[] = []): string[][] {
  return value !== null && typeof value === 'object'
    ? Object.entries(value).flatMap(([name, one]) => pathsOf(one, [...path, name]))
    : [[...path]]
}

function changedAt(fact: Fact, path: readonly string[]): FactOf<'signed'> {
  const copy = structuredClone(fact) as unknown as Record<string, unknown>
  const last = path.at(-1) ?? ''
  const holder = path.slice(0, -1).reduce((one, name) => one[name] as Record<string, unknown>, copy)
  const value = holder[last]
  holder[last] = typeof value === 'number' ? value + 1 : typeof value === 'boolean' ? !value : `${String(value)}x`
  return copy as unknown as FactOf<'signed'>
}

describe('a signature by a device’s key', () => {
  test('the worked example verifies, here and by another implementation from the text alone', () => {
    expect(isDeviceSigned(signed, key)).toBe(true)
    const { signature, ...proof } = (signed.body.method as { proof: { signature: string } }).proof
    const statement = Buffer.concat([
      Buffer.from('underwrap device signature 1\n'),
      canonicalBytes({ ...signed, body: { ...signed.body, method: { kind: 'device', proof } } }),
    ])
    const point = Buffer.from(key.body.publicKey, 'base64')
    const publicKey = createPublicKey({
      format: 'jwk',
      key: {
        kty: 'EC',
        crv: 'P-256',
        x: point.subarray(1, 33).toString('base64url'),
        y: point.subarray(33).toString('base64url'),
      },
    })
    const isSigned = verify(
      'sha256',
      statement,
      { key: publicKey, dsaEncoding: 'ieee-p1363' },
      Buffer.from(signature, 'base64'),
    )
    expect(isSigned).toBe(true)
  })

  test('any one value changed in the fact breaks it', () => {
    const paths = pathsOf(signed)
    expect(paths.length).toBeGreaterThan(15)
    fc.assert(
      fc.property(fc.constantFrom(...paths), (path) => {
        expect(isDeviceSigned(changedAt(signed, path), key)).toBe(false)
      }),
      { numRuns: 60 },
    )
  })

  test('another key, no key and no proof say nothing', () => {
    const other = { ...key, body: { ...key.body, publicKey: `B${'A'.repeat(86)}=` } }
    expect(isDeviceSigned(signed, other)).toBe(false)
    expect(isDeviceSigned(signed, { ...key, id: signed.id })).toBe(false)
    expect(isDeviceSigned({ ...signed, body: { ...signed.body, method: { kind: 'password' } } }, key)).toBe(false)
  })
})
