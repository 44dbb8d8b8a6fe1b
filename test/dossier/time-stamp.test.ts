import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { derOf, parseDer, partsOf } from '@/lib/dossier/sign/der'
import { sourceOfBytes } from '@/lib/verify/byte-source'
import { verifyFile } from '@/lib/verify/verify-file'
import { hasProgram, runOutside } from './outside-tools'
import { readSealed } from './read-sealed'
import { madeIdentity, signedFile } from './signed-file'
import { type ServiceManner, startTimeStampService, type TimeStampService } from './time-stamp-service'

const folder = mkdtempSync(join(tmpdir(), 'time-stamp-test-'))
const at = (name: string): string => join(folder, name)
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe.skipIf(!hasProgram('openssl'))('a time stamp [needs openssl]', () => {
  let service: TimeStampService
  beforeAll(async () => {
    service = await startTimeStampService(at('tsa'))
  })
  afterAll(() => service.stop())

  test('stands in the signature with the certificate of its signer alone; openssl verifies it over the signature value', async () => {
    service.behave('right')
    const path = await signedFile(await madeIdentity(), service.url, at('stamped.pdf'))
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
  test('of an RSA signer has its algorithm written in one way, whichever way the service wrote it', async () => {
    service.behave('other spelling')
    const path = await signedFile(await madeIdentity(), service.url, at('respelled.pdf'))
    expect(readSealed(path).signature.toString('hex')).not.toContain('06092a864886f70d01010b0500048201')
    const answer = await verifyFile(sourceOfBytes(readFileSync(path)))
    expect(answer.proved.map((one) => one.code)).toContain('time-stamp')
    expect(answer.breaks.filter((one) => one.place === 'time stamp')).toEqual([])
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
      const signing = signedFile(await madeIdentity(), service.url, at('unstamped.pdf'))
      await expect(signing).rejects.toMatchObject({ code: 'time-stamp-refused', message: expect.stringContaining(why) })
    },
  )
  test('is refused from a service that is not there', async () => {
    await expect(signedFile(await madeIdentity(), 'http://127.0.0.1:9/', at('none.pdf'))).rejects.toThrow(
      'cannot be reached',
    )
  })
})
