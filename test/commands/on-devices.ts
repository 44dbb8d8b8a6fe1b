import { afterAll, beforeAll, beforeEach } from 'vitest'
import { type SiteDevice, siteDevice } from './site-device'
import { openWorld, type World } from './world'

/** One world for the tests of a block, and for each of them a device of its own: read both inside a test. */
export function onDevices(): { readonly world: World; readonly device: SiteDevice } {
  const present = {} as { world: World; device: SiteDevice }
  beforeAll(async () => {
    present.world = await openWorld()
  }, 60_000)
  beforeEach(async () => {
    present.device = await siteDevice(present.world)
  })
  afterAll(() => present.world.store.remove())
  return present
}
