import { describe, expect, test } from 'vitest'
import { bodyOfValues } from '@/app/_desk/body-of-values'
import { streamOfNumber, streamOfParam } from '@/app/_desk/stream-name'

describe('the body that keyed values make', () => {
  test('a field left empty is absent, never zero and never an empty text', () => {
    expect(bodyOfValues({ reason: '', quantity: undefined, product: 'primer' })).toEqual({ product: 'primer' })
  })

  test('a group with nothing keyed in it is absent, and half a group stays half', () => {
    expect(bodyOfValues({ range: { min: undefined, max: undefined, unit: '' }, dueOn: '2026-10-14' })).toEqual({
      dueOn: '2026-10-14',
    })
    expect(bodyOfValues({ range: { min: { digits: 0, scale: 0 }, max: undefined } })).toEqual({
      range: { min: { digits: 0, scale: 0 } },
    })
  })

  test('zero, no and null are answers and stay', () => {
    expect(bodyOfValues({ atLeast: 0, approve: false, expiresOn: null })).toEqual({
      atLeast: 0,
      approve: false,
      expiresOn: null,
    })
  })

  test('items of a list with nothing keyed are dropped; the others keep their order', () => {
    expect(bodyOfValues({ rows: [{ temp: '16' }, {}, { temp: '21' }] })).toEqual({
      rows: [{ temp: '16' }, { temp: '21' }],
    })
  })

  test('when nothing at all was keyed there is no body', () => {
    expect(bodyOfValues({ a: '', b: { c: undefined } })).toBeUndefined()
  })
})

describe('the stream of a keyed number', () => {
  test.each([
    ['RS-884', 'batch:RS-884'],
    [' RS 884 ', 'batch:RS-884'],
    ['LOT/7 №2', 'batch:LOT-7-2'],
    ['(FB)0616', 'batch:FB-0616'],
  ])('%s stands under %s', (number, stream) => {
    expect(streamOfNumber('batch', number)).toBe(stream)
  })

  test('signs alone are no name', () => {
    expect(streamOfNumber('batch', ' — / ')).toBeNull()
    expect(streamOfNumber('batch', '')).toBeNull()
  })

  test('an address that is cut in the middle of a sign names nothing rather than failing', () => {
    expect(streamOfParam('batch', '%E0%A4%A')).toBeNull()
    expect(streamOfParam('batch', 'RS-884')).toBe('batch:RS-884')
    expect(streamOfParam('batch', '../person:x')).toBeNull()
  })
})
