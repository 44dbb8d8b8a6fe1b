import { beforeAll, describe, expect, test } from 'vitest'
import { flipsNotSeen, seededNumbers, structuralPlaces } from './flip-bytes'
import { check, preparedWorld } from './signed-by-hand'

let file: Uint8Array
beforeAll(async () => {
  file = (await preparedWorld()).file
})

describe('one byte changed', () => {
  test('any structural byte: the answer is never intact', { timeout: 300_000 }, async () => {
    const places = structuralPlaces(file)
    expect(places.length).toBeGreaterThan(8000)
    const number = seededNumbers(4)
    const { checkedCount, notSeen } = await flipsNotSeen(file, places, (byte) => [byte ^ (1 + number(255))])
    expect(checkedCount).toBe(places.length)
    expect(notSeen).toEqual([])
  })

  test('any digit of the signature made another digit: the answer is never intact', { timeout: 300_000 }, async () => {
    const from = Buffer.from(file).indexOf('/Contents <') + '/Contents <'.length
    const places = Array.from({ length: 1700 }, (_, index) => from + index)
    const number = seededNumbers(5)
    const { notSeen } = await flipsNotSeen(file, places, (byte) => {
      const digit = '0123456789abcdef'.replace(String.fromCharCode(byte), '').charCodeAt(number(15))
      return [digit, byte ^ 0x20]
    })
    expect(notSeen).toEqual([])
  })

  test('500 bytes anywhere: the answer is never intact', { timeout: 300_000 }, async () => {
    const number = seededNumbers(6)
    const places = Array.from({ length: 500 }, () => number(file.length))
    const { notSeen } = await flipsNotSeen(file, places, (byte) => [byte ^ (1 + number(255))])
    expect(notSeen).toEqual([])
  })

  test('the file without a change is intact, so the checks above can fail', async () => {
    expect((await check(file)).answer).toBe('intact')
  })
})
