import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { runsAsked } from '@/test/runs'
import { COMMANDS, check, type Device, type Model, makeDevice } from './model-commands'

/** Everything becomes well again: the device sends until nothing more may go, and a person sets aside what is refused. */
async function comeHome(model: Model, device: Device): Promise<void> {
  Object.assign(device.weather, { isOnline: true, isSignedIn: true, isVersionOld: false, fates: [] })
  device.room.bytesAtMost = 50_000_000
  for (let round = 0; round < 200; round++) {
    expect(await device.tabs.one.send(device.server.exchange)).toEqual({ kind: 'sent' })
    await check(model, device)
    const refused = (await device.tabs.one.entries()).find((one) => one.state === 'refused')
    if (!refused) return
    if ((await device.tabs.one.setAside(refused.id, 'cannot be mended')).ok) model.setAside.add(refused.id)
  }
  throw new Error('refused entries do not come to an end')
}

describe('whatever befalls the device', () => {
  test('nothing captured is lost or doubled', async () => {
    let captures = 0
    await fc.assert(
      fc.asyncProperty(fc.commands(COMMANDS, { maxCommands: 40, size: 'max' }), async (commands) => {
        const model: Model = { captured: [], setAside: new Set() }
        const device = makeDevice()
        await fc.asyncModelRun(() => ({ model, real: device }), commands)
        await comeHome(model, device)
        for (const { id } of model.captured)
          expect({ id, isThere: device.server.kept.has(id) }).toEqual({ id, isThere: !model.setAside.has(id) })
        expect(await device.tabs.two.status()).toMatchObject({ open: 0, oldestAt: null, photos: 0 })
        captures += model.captured.length
      }),
      { numRuns: runsAsked(300) },
    )
    expect(captures).toBeGreaterThan(runsAsked(300))
  }, 1_800_000)
})
