import { describe, expect, test } from 'vitest'
import { readPhotoClaims } from '@/lib/photo/photo-claims'
import { readPlace } from '@/lib/photo/place-claim'
import { combineTakenAt } from '@/lib/photo/taken-at-claim'
import { drawScene, takeInAccepted } from './drawn-photo'

describe('the time a photo claims', () => {
  test.each([
    ['with offset and fraction', '2021:04:11 15:47:53', '054', '-05:00', '2021-04-11T15:47:53.054-05:00', true],
    ['with an offset of no hours', '2026:05:13 09:02:00', null, '+00:00', '2026-05-13T09:02:00+00:00', true],
    ['without offset stays local', '2026:05:13 09:02:00', null, null, '2026-05-13T09:02:00', false],
    ['on a leap day', '2024:02:29 23:59:59', '7', '+14:00', '2024-02-29T23:59:59.7+14:00', true],
    ['with a fraction that is none', '2026:05:13 09:02:00', 'x', '+01:00', '2026-05-13T09:02:00+01:00', true],
  ])('is combined from its parts: %s', (_case, asRead, fraction, offset, text, hasOffset) => {
    expect(combineTakenAt(asRead, fraction, offset)).toEqual({
      kind: 'claimed',
      text,
      hasOffset,
      asRead,
      offsetAsRead: offset,
    })
  })

  test.each([
    ['zeros of a camera without a clock', '0000:00:00 00:00:00', null, 'no-such-time'],
    ['30 February', '2026:02:30 10:00:00', null, 'no-such-time'],
    ['29 February of a common year', '1900:02:29 10:00:00', null, 'no-such-time'],
    ['31 April', '2026:04:31 10:00:00', null, 'no-such-time'],
    ['month 13', '2026:13:01 10:00:00', null, 'no-such-time'],
    ['24 o’clock', '2026:05:13 24:00:00', null, 'no-such-time'],
    ['blanks', '    :  :     :  :  ', null, 'not-a-time'],
    ['words', 'yesterday', null, 'not-a-time'],
    ['an offset beyond the globe', '2026:05:13 10:00:00', '+14:01', 'no-such-offset'],
    ['an offset in words', '2026:05:13 10:00:00', 'CET', 'no-such-offset'],
  ])('is reported as invalid and not repaired: %s', (_case, asRead, offset, reason) => {
    expect(combineTakenAt(asRead, null, offset)).toEqual({ kind: 'invalid', reason, asRead, offsetAsRead: offset })
  })

  test('may be absent', () => {
    expect(combineTakenAt(null, '5', '+01:00')).toEqual({ kind: 'absent' })
  })
})

describe('the place a photo claims', () => {
  const place = {
    latitude: [26, 30, 0],
    latitudeRef: 'S',
    longitude: [28, 3, 45],
    longitudeRef: 'E',
    altitude: 1500.5,
    altitudeRef: Uint8Array.of(0),
  }
  const invalid = expect.objectContaining({ kind: 'invalid' })
  test.each([
    ['south and east', {}, { kind: 'claimed', latitudeDeg: -26.5, longitudeDeg: 28.0625, altitudeM: 1500.5 }],
    [
      'below the sea',
      { altitudeRef: Uint8Array.of(1) },
      { kind: 'claimed', latitudeDeg: -26.5, longitudeDeg: 28.0625, altitudeM: -1500.5 },
    ],
    [
      'no altitude',
      { altitude: undefined },
      { kind: 'claimed', latitudeDeg: -26.5, longitudeDeg: 28.0625, altitudeM: null },
    ],
    ['no hemisphere', { latitudeRef: undefined }, invalid],
    ['north of the pole', { latitude: [90, 0, 1] }, invalid],
    [
      'at the pole',
      { latitude: [90, 0, 0] },
      { kind: 'claimed', latitudeDeg: -90, longitudeDeg: 28.0625, altitudeM: 1500.5 },
    ],
    ['60 minutes', { longitude: [28, 60, 0] }, invalid],
    ['a fraction over zero', { longitude: [28, Number.NaN, 0] }, invalid],
    ['half a place', { longitude: undefined }, invalid],
    ['none', { latitude: undefined, longitude: undefined }, { kind: 'absent' }],
  ])('is read with its hemisphere or reported: %s', (_case, change, expected) => {
    expect(readPlace({ ...place, ...change })).toEqual(expected)
  })
})

describe('the claims in a file', () => {
  test('are read from its EXIF', async () => {
    const exif = {
      IFD0: { Make: 'Maker', Model: 'Model 1' },
      IFD2: { DateTimeOriginal: '2026:05:13 09:02:00', OffsetTimeOriginal: '+01:00' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1', GPSLongitudeRef: 'W', GPSLongitude: '0/1 7/1 30/1' },
    }
    const { intake } = await takeInAccepted(await drawScene(400, 300).withExif(exif).jpeg().toBuffer())
    expect(intake.claims).toMatchObject({
      metadata: 'read',
      takenAt: { kind: 'claimed', text: '2026-05-13T09:02:00+01:00' },
      place: { kind: 'claimed', latitudeDeg: 51.5, longitudeDeg: -0.125 },
      camera: { make: 'Maker', model: 'Model 1' },
      isWithoutOriginal: false,
    })
  })

  test('are flagged as without original where neither time nor camera is named', async () => {
    const { intake } = await takeInAccepted(await drawScene(400, 300).jpeg().toBuffer())
    expect(intake.claims).toMatchObject({ metadata: 'absent', takenAt: { kind: 'absent' }, isWithoutOriginal: true })
  })

  test('are unreadable where the EXIF is damaged, or larger than any camera writes', async () => {
    const unreadable = { metadata: 'unreadable', takenAt: { kind: 'absent' }, isWithoutOriginal: true }
    expect(await readPhotoClaims(Buffer.from('Exif\0\0nothing of a TIFF in here'))).toMatchObject(unreadable)
    expect(await readPhotoClaims(Buffer.alloc((1 << 20) + 1))).toMatchObject(unreadable)
  })
})
