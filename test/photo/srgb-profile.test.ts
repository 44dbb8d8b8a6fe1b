import { expect, test } from 'vitest'
import { pictureEngine } from '@/lib/photo/picture-engine'
import { createSlots } from '@/lib/photo/slots'
import { isSrgbProfile } from '@/lib/photo/srgb-profile'
import { drawScene } from './drawn-photo'
import { hasSharedPhotos, readSharedPhoto } from './shared-photos'

async function profileOf(bytes: Uint8Array): Promise<Uint8Array> {
  return (await pictureEngine(bytes).metadata()).icc ?? Buffer.alloc(0)
}
const drawnWith = async (profile: string) =>
  profileOf(await drawScene(20, 20).withIccProfile(profile).jpeg().toBuffer())

test('an sRGB profile is known by name and primaries together', async () => {
  const srgb = await drawnWith('srgb')
  const p3 = await drawnWith('p3')
  expect(isSrgbProfile(srgb)).toBe(true)
  expect(isSrgbProfile(p3)).toBe(false)
  expect(isSrgbProfile(Buffer.alloc(0))).toBe(false)
  expect(isSrgbProfile(srgb.subarray(0, 300))).toBe(false)
  // a wide profile that calls itself sRGB must still be transformed
  const posing = Buffer.from(p3)
  const name = posing.indexOf(Buffer.from('s\0P\x003\0C', 'latin1'))
  posing.write('s\0R\0G\0B', name, 'latin1')
  expect(name).toBeGreaterThan(0)
  expect(isSrgbProfile(posing)).toBe(false)
})

test.skipIf(!hasSharedPhotos)(
  'the profiles of real photos are told apart [needs photos beside this project]',
  async () => {
    expect(isSrgbProfile(await profileOf(readSharedPhoto('no_exif.jpg')))).toBe(true)
    expect(isSrgbProfile(await profileOf(readSharedPhoto('landscape_3.jpg')))).toBe(false)
    expect(isSrgbProfile(await profileOf(readSharedPhoto('IMG_5195.HEIC')))).toBe(false)
  },
)

test('slots run no more jobs at once than they have, in order, and survive a job that throws', async () => {
  const slots = createSlots(2)
  let running = 0
  let most = 0
  const finished: number[] = []
  const job = (no: number) => async () => {
    running += 1
    most = Math.max(most, running)
    await new Promise((resolve) => setImmediate(resolve))
    running -= 1
    if (no === 2) throw new Error('lost')
    finished.push(no)
  }
  const outcomes = await Promise.allSettled([1, 2, 3, 4, 5, 6].map((no) => slots.run(job(no))))
  expect(most).toBe(2)
  expect(finished).toEqual([1, 3, 4, 5, 6])
  expect(outcomes.filter(({ status }) => status === 'rejected')).toHaveLength(1)
})
