import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { askTimeStamp } from '@/lib/dossier/sign/time-stamp'
import { hasProgram } from '@/test/dossier/outside-tools'
import { startTimeStampService, type TimeStampService } from '@/test/dossier/time-stamp-service'
import { flipsNotSeen, seededNumbers } from './flip-bytes'
import { check, codesOf, preparedWorld, signedFile } from './signed-by-hand'

describe.skipIf(!hasProgram('openssl'))('a time stamp [needs openssl]', () => {
  const folder = mkdtempSync(join(tmpdir(), 'underwrap-stamp-'))
  let service: TimeStampService
  let world: Awaited<ReturnType<typeof preparedWorld>>
  let file: Uint8Array
  beforeAll(async () => {
    service = await startTimeStampService(folder)
    world = await preparedWorld()
    file = await signedFile(world.contents, world.holder.identity, {
      stamp: (sha256) => askTimeStamp(service.url, sha256),
    })
  })
  afterAll(async () => {
    await service.stop()
    rmSync(folder, { recursive: true })
  })

  test('is checked in full and its moment told', async () => {
    const answer = await check(file)
    expect(answer.breaks).toEqual([])
    expect(answer).toMatchObject({ answer: 'intact', about: { stampedAt: expect.stringMatching(/^20\d\d-.*Z$/) } })
    expect(answer.proved.map((one) => one.code)).toContain('time-stamp')
  })

  test('any digit of it made another: the answer is never intact', { timeout: 300_000 }, async () => {
    const from = Buffer.from(file).indexOf('/Contents <') + '/Contents <'.length
    const end = Buffer.from(file).indexOf('0000000000000000000000>')
    const digits = Buffer.from(file.subarray(from, end)).toString('latin1').replace(/0+$/, '').length
    expect(digits).toBeGreaterThan(3000)
    const number = seededNumbers(13)
    const { notSeen } = await flipsNotSeen(
      file,
      Array.from({ length: digits }, (_, index) => from + index),
      (byte) => ['0123456789abcdef'.replace(String.fromCharCode(byte), '').charCodeAt(number(15))],
    )
    expect(notSeen).toEqual([])
  })

  test('the other name of the same signature algorithm is refused: it is not signed', async () => {
    const plain = Buffer.from('300d06092a864886f70d0101010500', 'latin1')
    const at = Buffer.from(file).lastIndexOf(plain)
    const changed = file.slice()
    changed[at + plain.length - 5] = 'b'.charCodeAt(0)
    expect(codesOf(await check(changed))).toEqual(['stamp-malformed'])
  })

  test('one over another signature is named', async () => {
    const other = await signedFile(world.contents, world.holder.identity, {
      stamp: (sha256) =>
        askTimeStamp(
          service.url,
          Uint8Array.from(sha256, (byte) => byte ^ 1),
        ),
    })
    expect(codesOf(await check(other))).toEqual(['stamp-imprint'])
  })
})
