import { generateKeyPairSync } from 'node:crypto'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest'
import { reachLines } from '@/lib/cli/reach-lines'
import { secureSettingsOf } from '@/lib/cli/secure-settings'
import { baseUrl, trustedOrigins } from '@/lib/server/runtime/base-url'
import { type Issued, makeAuthority, type Wanted } from './authority-for-tests'

const folder = mkdtempSync(join(tmpdir(), 'underwrap-tls-files-'))
const NAMES = { dns: ['localhost', '*.site.example', 'Shaft.site.example'], addresses: ['127.0.0.1', '192.0.2.20'] }
const env = { ...process.env }

describe('certificate and key from the settings', () => {
  let issue: (wanted: Wanted) => Promise<Issued>
  let good: Issued
  beforeAll(async () => {
    ;({ issue } = await makeAuthority())
    good = await issue(NAMES)
  })
  afterEach(() => {
    process.env = { ...env }
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  function settings({ cert, key }: Partial<Issued>, more: Record<string, string> = {}): NodeJS.ProcessEnv {
    const file = (name: string, text: string) => {
      const path = join(mkdtempSync(join(folder, 'one-')), name)
      writeFileSync(path, text)
      return path
    }
    return {
      NODE_ENV: 'test',
      ...(cert === undefined ? {} : { UNDERWRAP_TLS_CERT: file('cert.pem', cert) }),
      ...(key === undefined ? {} : { UNDERWRAP_TLS_KEY: file('key.pem', key) }),
      ...more,
    }
  }

  test('both or neither', () => {
    expect(secureSettingsOf({ NODE_ENV: 'test' })).toBeNull()
    expect(() => secureSettingsOf(settings({ cert: good.cert }))).toThrow(/CERT is set without UNDERWRAP_TLS_KEY: name/)
    expect(() => secureSettingsOf(settings({ key: good.key }))).toThrow(/KEY is set without UNDERWRAP_TLS_CERT: name/)
    expect(secureSettingsOf(settings(good, { UNDERWRAP_HTTP_PORT: '8080' }))).toMatchObject({ plainPort: 8080 })
  })

  test('what cannot serve is a plain error that says what and what to do', async () => {
    const other = await issue(NAMES)
    const past = await issue({ ...NAMES, from: new Date('2020-01-01'), to: new Date('2021-01-01') })
    const future = await issue({ ...NAMES, from: new Date('2048-01-01'), to: new Date('2049-01-01') })
    const nameless = await issue({})
    const locked = generateKeyPairSync('ec', { namedCurve: 'P-256' }).privateKey.export({
      type: 'pkcs8',
      format: 'pem',
      cipher: 'aes-256-cbc',
      passphrase: 'a test',
    })
    const missing = { UNDERWRAP_TLS_CERT: join(folder, 'nowhere.pem') }
    for (const [given, said] of [
      [settings({ cert: good.cert, key: other.key }), /does not fit the certificate .* name the key/],
      [settings(past), /ended at 2021-01-01T00:00:00.000Z: get a new one/],
      [settings(future), /begins only at 2048-01-01/],
      [settings(nameless), /names no host in its subjectAltName.*have one made/],
      [settings({ cert: 'no pem', key: good.key }), /holds no certificate: a PEM file/],
      [settings({ cert: good.cert, key: 'no pem' }), /holds no private key: a PEM file/],
      [settings({ cert: good.cert, key: String(locked) }), /under a passphrase: store it without/],
      [settings(good, missing), /nowhere\.pem \(UNDERWRAP_TLS_CERT\) cannot be read \(ENOENT\): check/],
      [settings(good, { UNDERWRAP_URL: 'http://shaft.site.example' }), /write it with https/],
      [settings(good, { UNDERWRAP_HTTP_PORT: 'eighty' }), /a whole number from 1/],
      [settings({}, { UNDERWRAP_HTTP_PORT: '80' }), /no certificate is given/],
    ] as const)
      expect(() => secureSettingsOf(given), String(said)).toThrow(said)
  })

  test('the base address and the origins that are trusted follow the certificate', () => {
    process.env = { ...env, ...settings(good), PORT: '3443', UNDERWRAP_URL: '' }
    expect(baseUrl()).toBe('https://shaft.site.example:3443')
    expect(trustedOrigins()).toEqual([
      'https://shaft.site.example:3443',
      'https://192.0.2.20:3443',
      'https://localhost:3443',
      'https://127.0.0.1:3443',
    ])
    process.env.UNDERWRAP_PUBLIC_PORT = '443'
    expect(baseUrl()).toBe('https://shaft.site.example')
    process.env.UNDERWRAP_URL = 'https://other.example/'
    expect([baseUrl(), trustedOrigins()[0]]).toEqual(['https://other.example/', 'https://other.example'])
    process.env = { ...env, PORT: '3443', UNDERWRAP_URL: '', UNDERWRAP_TLS_CERT: '' }
    expect([baseUrl(), trustedOrigins()]).toEqual(['http://localhost:3443', ['http://localhost:3443']])
  })

  test('the start says how a phone reaches it, and where a browser would refuse', () => {
    const tls = secureSettingsOf(settings(good))?.tls ?? null
    const ask = { port: '3443', nowMs: Date.now(), own: ['192.0.2.20', '192.0.2.99'] }
    const lines = reachLines({ ...ask, tls, url: 'https://wrong.example' })
    expect(lines[0]).toContain('https://shaft.site.example:3443, https://192.0.2.20:3443')
    expect(lines[1]).toMatch(/^Not in the certificate, so a browser refuses it: 192\.0\.2\.99\./)
    expect(lines[2]).toMatch(/names wrong\.example, which is not in the certificate/)
    expect(lines[3]).toMatch(/^The certificate ends at .*Z\. A renewed file/)
    expect(reachLines({ ...ask, tls, url: 'https://a.site.example' }).length).toBe(3)
    expect(reachLines({ ...ask, tls: null, url: undefined })).toEqual([
      'From a phone on this network: http://192.0.2.20:3443, http://192.0.2.99:3443',
      expect.stringContaining('captures nothing without a network: see UNDERWRAP_TLS_CERT'),
    ])
  })
})
