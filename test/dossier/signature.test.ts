import { execFileSync } from 'node:child_process'
import { createHash, createPrivateKey } from 'node:crypto'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { buildDossier } from '@/lib/dossier/build-dossier'
import type { DossierSeal } from '@/lib/dossier/dossier-seal'
import { type SigningIdentity, signingIdentity } from '@/lib/dossier/sign/certificate'
import { derOf, parseDer, partsOf } from '@/lib/dossier/sign/der'
import { dossierSigner } from '@/lib/dossier/sign/dossier-signer'
import { makeCertificate } from '@/lib/dossier/sign/make-certificate'
import { readP12 } from '@/lib/dossier/sign/read-p12'
import { inputByHand } from './input-by-hand'
import { storeOf } from './jpeg-for-tests'
import { hasProgram, runOutside } from './outside-tools'
import { readSealed } from './read-sealed'
import { type ServiceManner, startTimeStampService, type TimeStampService } from './time-stamp-service'

const folder = mkdtempSync(join(tmpdir(), 'signature-test-'))
const at = (name: string): string => join(folder, name)
const openssl = (...parameters: string[]): void => {
  execFileSync('openssl', parameters, { cwd: folder, stdio: 'pipe' })
}
const NOW = new Date('2026-06-01T10:00:00Z')
const INPUT = inputByHand()
afterAll(() => rmSync(folder, { recursive: true, force: true }))

async function madeIdentity(): Promise<SigningIdentity> {
  const { certificate, key } = await makeCertificate('Plumbline-and-Thrice Inspection', NOW)
  return signingIdentity(
    certificate,
    createPrivateKey({ key: Buffer.from(key), format: 'der', type: 'pkcs8' }),
    true,
    NOW,
  )
}

/** A dossier by hand under a signer; what it attaches is of no account here. */
async function signedFile(identity: SigningIdentity, url: string | null, name: string): Promise<string> {
  const seal: DossierSeal = {
    tenant: 'tenant-a',
    checkpoint: {
      origin: 'underwrap/0123456789abcdef/tenant-a',
      size: 1,
      root: Buffer.alloc(32, 7).toString('base64'),
      text: 'a\n',
      vkey: 'v',
    },
    facts: [],
    streams: [],
    likeness: [],
    earlier: [],
    signer: dossierSigner(identity, url, NOW),
    checkAddress: 'https://record.example/check',
  }
  await buildDossier({ ...INPUT, seal }, storeOf({}), at(name))
  return at(name)
}

/** The same bytes apart from the signature's value. */
function withoutContents(path: string): string {
  const { signed } = readSealed(path)
  return createHash('sha256').update(signed).digest('hex')
}

test('the same input and moment give the same bytes up to the signature, and a signature of the template to the letter', async () => {
  const identity = await madeIdentity()
  const [first, second] = [await signedFile(identity, null, 'd1.pdf'), await signedFile(identity, null, 'd2.pdf')]
  expect(withoutContents(second)).toBe(withoutContents(first))
  const file = readSealed(first)
  const latin = file.bytes.toString('latin1')
  const [zero, a = 0, b = 0, c = 0] = file.byteRange
  expect([zero, latin[a], latin[b - 1], b + c]).toEqual([0, '<', '>', file.bytes.length])
  expect(latin).toMatch(/\/Type \/Sig \/Filter \/Adobe\.PPKLite \/SubFilter \/ETSI\.CAdES\.detached/)
  expect(/\/ByteRange \[([^\]]*)\]/.exec(latin)?.[1]).toMatch(/^0 \d+ \d+ \d+ +$/)
  expect(latin.slice(a + 1, b - 1)).toMatch(/^[0-9a-f]+0+$/)
  expect(Buffer.from(derOf(parseDer(file.signature))).equals(file.signature)).toBe(true)
  const [, wrapped] = partsOf(parseDer(file.signature))
  const [version, , , certificates, signers] = partsOf(partsOf(wrapped)[0])
  const [signer] = partsOf(signers)
  expect(Buffer.from(derOf(version ?? parseDer(Buffer.from('0500', 'hex')))).toString('hex')).toBe('020101')
  expect(partsOf(certificates).length).toBe(1)
  // version, issuer and serial, digest, three signed attributes, algorithm, signature: and no unsigned attribute
  expect(partsOf(signer).length).toBe(6)
  expect(partsOf(partsOf(signer)[3]).length).toBe(3)
})

describe.skipIf(!hasProgram('openssl'))('a certificate of the organisation [needs openssl]', () => {
  const request = (name: string, key: string[], days = '30'): void => {
    openssl(
      'req',
      '-x509',
      ...key,
      '-nodes',
      '-keyout',
      `${name}.key`,
      '-out',
      `${name}.pem`,
      '-days',
      days,
      '-subj',
      `/O=Plumbline/CN=${name}`,
    )
  }
  const pack = (name: string, ...more: string[]): Buffer => {
    openssl(
      'pkcs12',
      '-export',
      '-inkey',
      `${name}.key`,
      '-in',
      `${name}.pem`,
      '-out',
      `${name}.p12`,
      '-passout',
      'pass:plumb',
      ...more,
    )
    return readFileSync(at(`${name}.p12`))
  }
  // certificates are made while the tests run, to the second
  const today = new Date(Date.now() + 60_000)

  test.each([
    ['rsa', ['-newkey', 'rsa:2048']],
    ['ec', ['-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:P-256']],
  ])('of %s in PKCS 12 signs, and openssl verifies it', async (name, key) => {
    request(name, key)
    const identity = await readP12(pack(name), 'plumb', today)
    expect(identity.certificate).toMatchObject({ isMadeHere: false, subject: `CN=${name}, O=Plumbline` })
    const file = readSealed(await signedFile(identity, null, `${name}.pdf`))
    writeFileSync(at('signature.der'), file.signature)
    writeFileSync(at('signed.bin'), file.signed)
    const verified = runOutside('openssl', [
      ...['cms', '-verify', '-cades', '-CAfile', at(`${name}.pem`), '-purpose', 'any', '-binary', '-inform', 'DER'],
      ...['-in', at('signature.der'), '-content', at('signed.bin'), '-out', '/dev/null'],
    ])
    expect(verified).toMatchObject({ status: 0, output: expect.stringContaining('CAdES Verification successful') })
  })
  test('under a wrong password, in an old encryption or as no such file does not open', async () => {
    request('own', ['-newkey', 'rsa:2048'])
    const bytes = pack('own')
    const old = pack('own', '-keypbe', 'PBE-SHA1-3DES', '-certpbe', 'PBE-SHA1-3DES', '-macalg', 'sha1')
    for (const [file, password] of [
      [bytes, 'plum'],
      [old, 'plumb'],
      [Buffer.from('no such file'), 'plumb'],
    ] as const)
      await expect(readP12(file, password, today)).rejects.toMatchObject({ code: 'certificate-unusable' })
  })
  test('with a short key, another curve or out of its time cannot sign', async () => {
    request('short', ['-newkey', 'rsa:1024'])
    request('curve', ['-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:P-384'])
    request('brief', ['-newkey', 'rsa:2048'], '2')
    await expect(readP12(pack('short'), 'plumb', today)).rejects.toThrow('less than 2048 bits')
    await expect(readP12(pack('curve'), 'plumb', today)).rejects.toThrow('another than P-256')
    const later = new Date(today.getTime() + 3 * 86_400_000)
    await expect(readP12(pack('brief'), 'plumb', later)).rejects.toThrow('cannot sign now')
  })
})

describe.skipIf(!hasProgram('openssl'))('a time stamp [needs openssl]', () => {
  let service: TimeStampService
  beforeAll(async () => {
    service = await startTimeStampService(at('tsa'))
  })
  afterAll(() => service.stop())

  test('stands in the signature with the certificate of its signer alone; openssl verifies it over the signature value', async () => {
    service.behave('right')
    const path = await signedFile(await madeIdentity(), service.url, 'stamped.pdf')
    const { signature } = readSealed(path)
    const [, wrapped] = partsOf(parseDer(signature))
    const signers = partsOf(partsOf(wrapped)[0]).at(-1)
    const parts = partsOf(partsOf(signers)[0])
    const [stamp] = partsOf(parts.at(-1))
    const [, values] = partsOf(stamp)
    const [token] = partsOf(values)
    if (!token) throw new Error('no token')
    const value = parts.at(-2)
    writeFileSync(at('token.der'), derOf(token))
    writeFileSync(at('value.bin'), value ? Buffer.from(value.valueBlock.toBER(false)) : Buffer.alloc(0))
    expect(partsOf(partsOf(partsOf(partsOf(token)[1])[0])[3]).length).toBe(1)
    const verified = runOutside('openssl', [
      ...['ts', '-verify', '-token_in', '-in', at('token.der'), '-data', at('value.bin'), '-CAfile', service.authority],
    ])
    expect(verified.output).toContain('Verification: OK')
  })
  test.each([
    ['status 500', 'status 500'],
    ['no reply', 'no time-stamp reply'],
    ['another digest', 'another digest'],
    ['another nonce', 'another question'],
    ['broken signature', 'does not hold'],
    ['refusal', 'refused'],
  ] satisfies [ServiceManner, string][])(
    'is refused from a service with %s, and nothing is signed',
    async (manner, why) => {
      service.behave(manner)
      const signing = signedFile(await madeIdentity(), service.url, 'unstamped.pdf')
      await expect(signing).rejects.toMatchObject({ code: 'time-stamp-refused', message: expect.stringContaining(why) })
    },
  )
  test('is refused from a service that is not there', async () => {
    await expect(signedFile(await madeIdentity(), 'http://127.0.0.1:9/', 'none.pdf')).rejects.toThrow(
      'cannot be reached',
    )
  })
})
