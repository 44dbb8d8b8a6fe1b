import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { derOf, parseDer, partsOf } from '@/lib/dossier/sign/der'
import { readP12 } from '@/lib/dossier/sign/read-p12'
import { hasProgram, runOutside } from './outside-tools'
import { readSealed } from './read-sealed'
import { madeIdentity, signedFile } from './signed-file'

const folder = mkdtempSync(join(tmpdir(), 'signature-test-'))
const at = (name: string): string => join(folder, name)
const openssl = (...parameters: string[]): void => {
  execFileSync('openssl', parameters, { cwd: folder, stdio: 'pipe' })
}
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** The same bytes apart from the signature's value. */
function withoutContents(path: string): string {
  const { signed } = readSealed(path)
  return createHash('sha256').update(signed).digest('hex')
}

test('the same input and moment give the same bytes up to the signature, and a signature of the template to the letter', async () => {
  const identity = await madeIdentity()
  const [first, second] = [
    await signedFile(identity, null, at('d1.pdf')),
    await signedFile(identity, null, at('d2.pdf')),
  ]
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
    const file = readSealed(await signedFile(identity, null, at(`${name}.pdf`)))
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
